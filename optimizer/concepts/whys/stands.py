"""One room at one place while all others stay where they are: every choice and turn, checked in real geometry."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, get_args

from optimizer.brief import RULES, RelationKind, RuleId
from optimizer.catalogue import SizedRoom
from optimizer.check import CHECKS, Finding
from optimizer.concepts.case import Case
from optimizer.concepts.whys.shrink import smallest
from optimizer.concepts.whys.trying import Named
from optimizer.concepts.whys.words import relation_words, sentence
from optimizer.layout import Layout, Placement, turns_at

_EVEN: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Stand:
    """A layout with the room at the place, and all that it breaks."""

    placement: Placement
    layout: Layout
    findings: tuple[Finding, ...]

    @property
    def broken(self) -> frozenset[Named]:
        """Rules broken."""
        return frozenset((finding.rule, finding.rooms) for finding in self.findings)


def stands_at(
    case: Case, layout: Layout, name: str, at_ft: tuple[float, float], *, rules: Iterable[RuleId] = CHECKS
) -> tuple[Stand, ...]:
    """The room at the place in every choice and turn, as it is and up to the grid's next lines; with what it breaks of
    some rules, or of all.
    """
    room = next(room for room in case.rooms if room.name == name)
    layouts = ((p, with_room(case, layout, p)) for p in _placements(case, room, at_ft))
    return tuple(Stand(placement, placed, case.findings(placed, rules)) for placement, placed in layouts)


def with_room(case: Case, layout: Layout, placement: Placement) -> Layout:
    """The layout with one room put where it is said, in the brief's order."""
    stands = {there.room: there for there in layout.placements} | {placement.room: placement}
    return Layout(tuple(stands[room.name] for room in case.rooms if room.name in stands))


def least_broken(stands: Sequence[Stand]) -> Stand:
    """The stand that breaks least."""
    return min(stands, key=lambda stand: (len(stand.findings), sum(f.amount for f in stand.findings)))


def in_the_way(stands: Sequence[Stand]) -> tuple[Named, ...]:
    """Rules of which every stand breaks one, and from which none can be dropped; none where some stand breaks none."""
    every = [stand.broken for stand in stands]
    if not every or not all(every):
        return ()
    # What many stands break is let go last, and the yard's own rules after what the brief could loosen.
    named = {one for broken in every for one in broken}
    rules, relations = list(RULES), get_args(RelationKind)
    order = sorted(named, key=lambda one: (-_count(every, one), one[0] in relations, rules.index(one[0]), one[1]))
    return smallest(order, lambda kept: all(not broken.isdisjoint(kept) for broken in every))


def told_of(case: Case, named: Sequence[Named]) -> tuple[tuple[str, str, tuple[str, ...]], ...]:
    """Rules with their sentences; a relation of the brief with its own."""
    return tuple((rule, _sentence(case, rule, rooms), rooms) for rule, rooms in named)


def _sentence(case: Case, rule: RuleId, rooms: tuple[str, ...]) -> str:
    hard = (r for r in case.scenario.brief.relations if r.is_hard and r.kind == rule)
    relation = next((r for r in hard if set(r.between) <= set(rooms)), None)
    return RULES[rule].sentence if relation is None else sentence(relation_words(case.scenario, relation))


def _count(every: Sequence[frozenset[Named]], named: Named) -> int:
    return sum(named in broken for broken in every)


def _placements(case: Case, room: SizedRoom, at_ft: tuple[float, float]) -> Iterator[Placement]:
    """Every choice and turn, each as it is and, where that is larger, up to the grid's next lines."""
    for placement in turns_at(room, at_ft):
        yield placement
        larger = replace(placement, width_ft=_up(case, placement.width_ft), depth_ft=_up(case, placement.depth_ft))
        if larger.area_sqft > placement.area_sqft + _EVEN:
            yield larger


def _up(case: Case, side_ft: float) -> float:
    """A side up to whole steps of the grid."""
    step_ft = case.scenario.grid_step_ft
    return round(math.ceil(side_ft / step_ft - _EVEN) * step_ft, 6)
