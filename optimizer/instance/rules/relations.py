"""The six relations: between two rooms as terms of their pair, between a room and a thing as allowed positions."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation, RelationKind, RuleId
from optimizer.catalogue import SizedRoom
from optimizer.instance.anchors import centres_ft
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells, any_in_window
from optimizer.instance.pairs import Pair
from optimizer.instance.raster import covered, shared_edge, within
from optimizer.instance.rules.part import Part
from optimizer.instance.sight import look_in, shares_from_site, view_of
from optimizer.instance.variants import Variant

TOUCHING_SHARE_FT = 3.0
TOLERANCE_FT = 0.02

OnThing = Callable[[Context, Relation, Variant, Geometry, bool], Cells]
"""(context, relation, variant, thing, whether the room is the relation's first) -> allowed positions."""


def of_kind(context: Context, kind: RelationKind, *, hard: bool) -> tuple[Relation, ...]:
    """Relations of a kind, in the brief's order."""
    return tuple(r for r in context.scenario.brief.relations if r.kind == kind and r.is_hard == hard)


def joins(context: Context, relation: Relation, pair: Pair) -> bool:
    """Whether the relation is between the two rooms of the pair."""
    return set(relation.between) == {context.rooms[pair.first].name, context.rooms[pair.second].name}


def end_of(context: Context, relation: Relation, pair: Pair, end: int) -> int:
    """Which room of the pair (0 or 1) is the relation's end."""
    return 0 if relation.between[end] == context.rooms[pair.first].name else 1


def thing_of(context: Context, relation: Relation, room: SizedRoom) -> Geometry | None:
    """The site's thing at the relation's other end, or None where the relation does not join the room to one."""
    if room.name not in relation.between:
        return None
    other = relation.between[1] if relation.between[0] == room.name else relation.between[0]
    return context.thing(other)


def _near(context: Context, relation: Relation, variant: Variant, thing: Geometry, _first: bool) -> Cells:
    close = within(context.lattice, thing, (relation.within_ft or 0.0) + TOLERANCE_FT)
    return any_in_window(close, width=variant.width, depth=variant.depth)


def _apart(context: Context, relation: Relation, variant: Variant, thing: Geometry, _first: bool) -> Cells:
    close = within(context.lattice, thing, relation.at_least_ft or 0.0)
    return ~any_in_window(close, width=variant.width, depth=variant.depth)


def _touching(context: Context, relation: Relation, variant: Variant, thing: Geometry, _first: bool) -> Cells:
    share = context.lattice.need(relation.shared_edge_ft or TOUCHING_SHARE_FT)
    cells = covered(context.lattice, thing)
    return np.asarray(shared_edge(cells, width=variant.width, depth=variant.depth) >= share)


def _sight(context: Context, relation: Relation, variant: Variant, _thing: Geometry, _first: bool) -> Cells:
    """Positions that keep a relation of sight as far as the site and the room's own panel go."""
    look = look_in(context, relation)
    room = next(room for room in context.rooms if room.name in relation.between)
    screened = room.choices[variant.choice].is_screened
    seen = shares_from_site(context, look, (variant.width, variant.depth), screened=screened)
    return np.ones((context.lattice.rows, context.lattice.columns), dtype=bool) if seen is None else look.keeps(seen)


def _faces(context: Context, _relation: Relation, variant: Variant, thing: Geometry, first: bool) -> Cells:
    allowed = np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)
    if not first or variant.front is None:
        return allowed
    along, across = (0, 1) if variant.front[1] == "y" else (1, 0)
    low = (thing.bounds[along], thing.bounds[across])
    high = (thing.bounds[along + 2], thing.bounds[across + 2])
    size = (variant.width, variant.depth)
    x, y = centres_ft(context.lattice, variant)
    centre = (x, y)
    half = [s * context.lattice.step_ft / 2 for s in size]
    beside = (centre[along] + half[along] > low[0] + TOLERANCE_FT) & (
        centre[along] - half[along] < high[0] - TOLERANCE_FT
    )
    if variant.front[0] == "+":
        return np.asarray(beside & (centre[across] + half[across] <= low[1] + TOLERANCE_FT))
    return np.asarray(beside & (centre[across] - half[across] >= high[1] - TOLERANCE_FT))


def _anywhere(context: Context, _relation: Relation, _variant: Variant, _thing: Geometry, _first: bool) -> Cells:
    """Levels and ways are the judge's: no position is ruled out for them alone."""
    return np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)


ON_THING: dict[RelationKind, OnThing] = {
    "near": _near,
    "apart": _apart,
    "touching": _touching,
    "in_view": _sight,
    "out_of_view": _sight,
    "faces": _faces,
    "accessible": _anywhere,
}


def _positions(kind: RelationKind) -> Callable[[Context, SizedRoom, Variant], Cells | None]:
    def positions(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
        allowed = None
        for relation in of_kind(context, kind, hard=True):
            thing = thing_of(context, relation, room)
            if thing is not None:
                fits = ON_THING[kind](context, relation, variant, thing, relation.between[0] == room.name)
                allowed = fits if allowed is None else allowed & fits
        return allowed

    return positions


def _pair(kind: RelationKind, add: Callable[[Context, Pair, Relation], Pair]) -> Callable[[Context, Pair], Pair]:
    def pair_with(context: Context, pair: Pair) -> Pair:
        for relation in of_kind(context, kind, hard=True):
            if joins(context, relation, pair):
                pair = add(context, pair, relation)
        return pair

    return pair_with


def _touch(context: Context, pair: Pair, relation: Relation) -> Pair:
    share = context.lattice.need(relation.shared_edge_ft or TOUCHING_SHARE_FT)
    return replace(pair, must_touch=True, touch_share=max(pair.touch_share, share))


ADD_TO_PAIR: dict[RelationKind, Callable[[Context, Pair, Relation], Pair]] = {
    "near": lambda _c, p, r: replace(p, near_ft=min(p.near_ft or np.inf, r.within_ft or 0.0)),
    "apart": lambda _c, p, r: replace(p, apart_ft=max(p.apart_ft, r.at_least_ft or 0.0)),
    "touching": _touch,
    "in_view": lambda c, p, r: replace(p, views=(*p.views, view_of(c, r, p))),
    "out_of_view": lambda c, p, r: replace(p, views=(*p.views, view_of(c, r, p))),
    "faces": lambda c, p, r: replace(p, faces=(*p.faces, end_of(c, r, p, 0))),
    "accessible": lambda _c, p, _r: p,
}

PARTS: dict[RuleId, Part] = {
    kind: Part(positions=_positions(kind), pair=_pair(kind, add)) for kind, add in ADD_TO_PAIR.items()
}
