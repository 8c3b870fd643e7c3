"""Relations that are wished for: what one that is not kept costs, between two rooms or to a thing of the site."""

from collections.abc import Iterator

import numpy as np

from optimizer.brief import Relation
from optimizer.catalogue import SizedRoom, rates
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sight_shares import look_in
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Ask, Penalty, View
from optimizer.engine.rules import RELATIONS
from optimizer.engine.rules.relations import joins, thing_of
from optimizer.engine.terms.term import CENTS, Money, Term, nowhere

NAME = "wishes"


def _money(context: Context, relation: Relation) -> float:
    return rates().sight * context.scenario.brief.weights.sight * (relation.wish or 0.0)


def _to_things(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money:
    losses = nowhere(context)
    for relation in _wished(context):
        thing = thing_of(context, relation, room)
        if thing is not None:
            kept = RELATIONS[relation.kind].on_thing(context, relation, variant, thing)
            losses += np.where(kept, 0.0, _money(context, relation))
    return losses


def _between_rooms(context: Context, first: int, second: int) -> Iterator[Penalty]:
    for relation in _wished(context):
        if joins(context, relation, first, second):
            condition = RELATIONS[relation.kind].condition(context, relation, first)
            if condition is not None:
                yield Penalty(NAME, condition, round(CENTS * _money(context, relation)))


def _looks(context: Context, first: int, second: int) -> Iterator[Ask]:
    for relation in _wished(context):
        if relation.kind in ("in_view", "out_of_view") and joins(context, relation, first, second):
            look = look_in(context, relation)
            view = View(look, 0 if look.looker == context.rooms[first].name else 1)
            yield Ask(NAME, view, round(CENTS * _money(context, relation)))


def _wished(context: Context) -> Iterator[Relation]:
    """Wishes that the engine knows; an accessible way is the judge's."""
    return (r for r in context.scenario.brief.relations if not r.is_hard and r.kind in RELATIONS)


TERM = Term(NAME, place=_to_things, stamps=_between_rooms, asks=_looks)
