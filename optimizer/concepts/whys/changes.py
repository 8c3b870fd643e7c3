"""Changes of a brief that let go of one thing that binds, or ask less of it: each as words and a patch, cheapest first.

What the yard's rules and its codes ask is never loosened here.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from optimizer.brief import Guests, Relation
from optimizer.catalogue import party_is_held
from optimizer.concepts.case import Case
from optimizer.concepts.floor import floor_price
from optimizer.concepts.held import hold_words
from optimizer.concepts.whys.bindings import Binding
from optimizer.concepts.whys.words import money, relation_words
from optimizer.scenario.patch import Patch

DEARER: Final = (Decimal("1.5"), Decimal(3))
"""How much more money is tried, as shares: much at first, since a plan is then soon found and says what would do."""
_ALL_BUT_LET_GO: Final = 10.0
"""So many times the distance is tried at first."""
_STEP: Final = {"ft": 0.5, "m": 0.1}
_FIGURES: Final = {"near": "within", "apart": "at_least", "touching": "shared_edge"}
_USUAL_EDGE_FT: Final = 3.0


@dataclass(frozen=True, slots=True)
class Change:
    """A change to try: in words, and as a patch of the scenario's text. `relation`: what it loosens; `ceiling`: the new
    ceiling, if it is such a change.
    """

    words: str
    patch: Patch
    relation: int | None = None
    ceiling: Decimal | None = None


Group = tuple[Change, ...]
"""Changes of one thing, the smallest first: the first that works is enough."""


def changes_of(case: Case, bindings: Sequence[Binding]) -> Iterator[Group]:
    """Groups for all that may be loosened or let go of what binds, in this order: distances, the party, the ceiling,
    rooms left to choice, holds.
    """
    brief = case.scenario.brief
    relations = [brief.relations.index(one.relation) for one in bindings if one.relation]
    yield from (_relation(case, index) for index in relations)
    if any(one.rule == "party_seats" for one in bindings):
        yield from _smaller_party(case)
    if any(one.rule == "budget" for one in bindings) and brief.budget.ceiling is not None:
        yield tuple(_ceiling(case, share) for share in DEARER)
    wanted = [one.required for one in bindings if one.required and not one.is_asked]
    yield from ((_left_to_choice(case, i),) for i, room in enumerate(brief.rooms) if room.name in wanted)
    holds = [brief.holds.index(one.hold) for one in bindings if one.hold and not one.is_asked]
    yield from ((_hold(case, index),) for index in holds)


def required(case: Case, name: str) -> Change:
    """A room that must be there."""
    index = [room.name for room in case.scenario.brief.rooms].index(name)
    return Change(f"make the {name} required", (("add", f"/brief/rooms/{index}/required", True),))


def with_figure(case: Case, index: int, figure_ft: float) -> Change:
    """A relation with another figure [ft], rounded so that what was measured still keeps it."""
    relation, scenario = case.scenario.brief.relations[index], case.scenario
    step, figure = _STEP[scenario.units], figure_ft / scenario.unit_ft
    steps = math.ceil(figure / step - 1e-6) if relation.kind == "near" else math.floor(figure / step + 1e-6)
    value = round(steps * step, 3)
    words = f"loosen it: {relation_words(scenario, _figured(relation, value * scenario.unit_ft))}"
    was = f", not {round(figure_of(relation) / scenario.unit_ft, 2):g}"
    return Change(words + was, (("add", f"/brief/relations/{index}/{_FIGURES[relation.kind]}", value),), index)


def figure_of(relation: Relation) -> float:
    """The length that a relation asks for [ft]; 0 where it asks for none."""
    figures = {"near": relation.within_ft, "apart": relation.at_least_ft, "touching": relation.shared_edge_ft}
    usual = _USUAL_EDGE_FT if relation.kind == "touching" else 0.0
    return figures.get(relation.kind) or usual


def with_ceiling(case: Case, ceiling: Decimal) -> Change:
    """Another ceiling."""
    words = f"raise the ceiling to {money(case.scenario, ceiling)}"
    return Change(words, (("replace", "/budget/ceiling", int(ceiling)),), ceiling=ceiling)


def _figured(relation: Relation, figure_ft: float) -> Relation:
    if relation.kind == "near":
        return replace(relation, within_ft=figure_ft)
    if relation.kind == "apart":
        return replace(relation, at_least_ft=figure_ft)
    return replace(relation, shared_edge_ft=figure_ft)


def _relation(case: Case, index: int) -> Group:
    relation = case.scenario.brief.relations[index]
    away = Change(f"let go of it: {relation_words(case.scenario, relation)}", (_removed("relations", index),))
    asked_ft = figure_of(relation)
    if relation.kind not in _FIGURES or not asked_ft:
        return (away,)
    loosest_ft = asked_ft * _ALL_BUT_LET_GO if relation.kind == "near" else asked_ft / _ALL_BUT_LET_GO
    return (with_figure(case, index, max(loosest_ft, case.scenario.unit_ft)), away)


def _hold(case: Case, index: int) -> Change:
    words = f"let go of the hold: {hold_words(case, case.scenario.brief.holds[index])}"
    return Change(words, (_removed("holds", index),))


def _removed(part: str, index: int) -> tuple[str, str, object]:
    return ("remove", f"/brief/{part}/{index}", None)


def _ceiling(case: Case, share: Decimal) -> Change:
    ceiling = case.scenario.brief.budget.ceiling
    assert ceiling is not None
    return with_ceiling(case, (max(ceiling, floor_price(case)) * share).quantize(Decimal(1)))


def _smaller_party(case: Case) -> Iterator[Group]:
    """A party of no more than the everyday guests, where the one that was asked for binds."""
    guests = case.scenario.brief.guests
    if guests.party > guests.everyday and party_is_held(case.rooms, guests):
        smaller = replace(guests, party=guests.everyday)
        yield (Change(f"plan for a party of {smaller.party}", (_party_of(smaller),)),)


def _left_to_choice(case: Case, index: int) -> Change:
    """A required room left to choice, with as much of the party as the other rooms hold without it."""
    room, guests = case.scenario.brief.rooms[index], case.scenario.brief.guests
    words = f"leave the {room.name} to choice"
    patch: list[tuple[str, str, object]] = [("add", f"/brief/rooms/{index}/required", False)]
    others = [sized for sized in case.rooms if sized.name != room.name]
    if party_is_held(case.rooms, guests) and not party_is_held(others, guests):
        parties = (replace(guests, party=people) for people in range(guests.party, -1, -1))
        guests = next(smaller for smaller in parties if party_is_held(others, smaller))
        words += f", and plan for a party of {guests.party}"
        patch.append(_party_of(guests))
    return Change(words, tuple(patch))


def _party_of(guests: Guests) -> tuple[str, str, object]:
    return ("replace", "/brief/guests/party", guests.party)
