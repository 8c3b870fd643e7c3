"""Relations of the brief, hard and wished alike: by how much each is missed, and in which words."""

from collections.abc import Callable, Iterator
from math import isfinite
from typing import Final

from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation, RelationKind
from optimizer.check.blame import blamed, standing_between
from optimizer.check.case import TOLERANCE_FT, Check, CheckCase
from optimizer.check.edges import shared_edge_ft
from optimizer.check.finding import Finding
from optimizer.check.neighbours import LEAST_FT
from optimizer.check.on_foot import Ends, on_foot_ft, round_furniture_ft
from optimizer.check.sight import look_for, sight_share
from optimizer.derived import Derived
from optimizer.fields.sight_ends import Look
from optimizer.fields.site_walls import walls_for_feet
from optimizer.grading import RouteFinding, accessible_route
from optimizer.layout import Placed

Miss = tuple[float, str]
"""By how much a relation is missed [ft, or share of sight], and in words; the amount of a front is 1."""


def relation_check(kind: RelationKind) -> Check:
    """Check of all hard relations of one kind."""

    def check(case: CheckCase) -> Iterator[Finding]:
        for relation in case.scenario.brief.relations:
            miss = miss_of(case, relation) if relation.kind == kind and relation.is_hard else None
            if miss is not None:
                rooms = tuple(dict.fromkeys((*relation.between, *_between(case, relation))))
                yield Finding(kind, rooms, miss[0], _UNITS[kind], miss[1])

    return check


def _between(case: CheckCase, relation: Relation) -> tuple[str, ...]:
    """Rooms between the two ends that are to blame too: those that hide one, that are gone round, or that the way leads
    through.
    """
    if relation.kind == "in_view":
        look, others = look_for(case.scenario, case.placed.wished, relation), case.placed.chosen
        hiding = (room for room, _ in others if room.name not in relation.between)
        return blamed(case.placed, hiding, lambda left: _keeps(case, look, relation, left))
    if relation.kind == "near" and relation.by == "walking":
        (start, one), (end, other) = _ends(case, relation)
        third = (room for room in case.placed if room.name not in (start, end))
        standing = standing_between(third, (one, other), relation.within_ft or 0.0)
        return blamed(case.placed, standing, lambda left: _is_kept(case, relation, left))
    return _route(case, relation).through if relation.kind == "accessible" else ()


def _is_kept(case: CheckCase, relation: Relation, placed: Placed) -> bool:
    return miss_of(CheckCase(Derived(case.scenario, placed)), relation) is None


def _keeps(case: CheckCase, look: Look, relation: Relation, placed: Placed) -> bool:
    share = sight_share(case.scenario, placed, relation)
    return share is not None and bool(look.keeps(share))


def miss_of(case: CheckCase, relation: Relation) -> Miss | None:
    """By how much a relation is missed; None where it is kept, or an end of it is left out."""
    one, other = (case.shape_of(name) for name in relation.between)
    return None if one is None or other is None else _MISSES[relation.kind](case, relation, one, other)


def _touching(case: CheckCase, relation: Relation, one: BaseGeometry, other: BaseGeometry) -> Miss | None:
    asked = LEAST_FT if relation.shared_edge_ft is None else relation.shared_edge_ft
    found = max(0.0, shared_edge_ft(one, other) - _walled_ft(case, one, other))
    words = f"{_pair(relation)} share {case.length(found)} of edge, {case.length(asked)} is asked"
    return (asked - found, words) if found < asked - TOLERANCE_FT or one.distance(other) > TOLERANCE_FT else None


def _walled_ft(case: CheckCase, one: BaseGeometry, other: BaseGeometry) -> float:
    """Length of the edge between two shapes on which a wall stands that nobody walks through."""
    if not case.site.walls:
        return 0.0
    edge = one.buffer(TOLERANCE_FT).intersection(other.buffer(TOLERANCE_FT))
    walled = sum(float(part.intersection(edge).length) for part in walls_for_feet(case.site))
    # The buffers reach a tolerance past both ends of the edge.
    return max(0.0, walled - 2 * TOLERANCE_FT)


def _near(case: CheckCase, relation: Relation, one: BaseGeometry, other: BaseGeometry) -> Miss | None:
    asked, found = relation.within_ft or 0.0, _distance_ft(case, relation, one, other)
    if relation.by == "walking" and TOLERANCE_FT < found <= asked + TOLERANCE_FT:
        found = round_furniture_ft(case, _ends(case, relation))
    if not isfinite(found):
        return asked, f"no way leads from {relation.between[0]} to {relation.between[1]}"
    words = f"{_pair(relation)} are {case.length(found)} apart, at most {case.length(asked)} is asked"
    return (found - asked, words) if found > asked + TOLERANCE_FT else None


def _apart(case: CheckCase, relation: Relation, one: BaseGeometry, other: BaseGeometry) -> Miss | None:
    asked, found = relation.at_least_ft or 0.0, _distance_ft(case, relation, one, other)
    words = f"{_pair(relation)} are {case.length(found)} apart, at least {case.length(asked)} is asked"
    return (asked - found, words) if found < asked - TOLERANCE_FT else None


def _in_view(case: CheckCase, relation: Relation, _one: BaseGeometry, _other: BaseGeometry) -> Miss | None:
    return _sight(case, relation, "at least")


def _out_of_view(case: CheckCase, relation: Relation, _one: BaseGeometry, _other: BaseGeometry) -> Miss | None:
    return _sight(case, relation, "at most")


def _sight(case: CheckCase, relation: Relation, bound: str) -> Miss | None:
    look = look_for(case.scenario, case.placed.wished, relation)
    found = case.sight_share(relation)
    if found is None or look.keeps(found):
        return None
    words = f"{look.looker} sees {found:.0%} of {look.seen}, {bound} {look.share:.0%} is asked"
    return abs(found - look.share), words.replace("%", " %")


def _faces(case: CheckCase, relation: Relation, one: BaseGeometry, other: BaseGeometry) -> Miss | None:
    placed = case.placed.of(relation.between[0])
    if placed is None:
        return None
    (left, bottom, right, top), (x0, y0, x1, y1) = one.bounds, other.bounds
    beyond = {"+x": x0 - right, "-x": left - x1, "+y": y0 - top, "-y": bottom - y1}[placed.front]
    sideways = placed.front in {"+x", "-x"}
    low, high, other_low, other_high = (bottom, top, y0, y1) if sideways else (left, right, x0, x1)
    # A point has no width to overlap with: it need only lie before the front.
    before_it = min(high, other_high) - max(low, other_low) >= min(TOLERANCE_FT, other_high - other_low)
    faces = beyond >= -TOLERANCE_FT and before_it
    return None if faces else (1.0, f"{relation.between[0]} does not open towards {relation.between[1]}")


def _accessible(case: CheckCase, relation: Relation, _one: BaseGeometry, _other: BaseGeometry) -> Miss | None:
    found = _route(case, relation)
    return None if found.is_accessible else (float(len(found.reasons)), "; ".join(found.reasons))


def _route(case: CheckCase, relation: Relation) -> RouteFinding:
    """From a door or entrance to a room, whichever of the two is named first."""
    rooms = [name for name in relation.between if case.placed.of(name)]
    end = rooms[-1] if rooms else relation.between[1]
    start = next(name for name in relation.between if name != end)
    return accessible_route(case.placed, case.derived.levelled, case.network, start, end)


def _distance_ft(case: CheckCase, relation: Relation, one: BaseGeometry, other: BaseGeometry) -> float:
    """Distance from edge to edge [ft], straight or on foot; on foot infinite where no way leads."""
    straight = float(one.distance(other))
    if relation.by == "straight" or straight <= TOLERANCE_FT:
        return straight
    return max(straight, on_foot_ft(case, _ends(case, relation)))


def _ends(case: CheckCase, relation: Relation) -> Ends:
    one, other = relation.between
    return (one, case.shape_of(one)), (other, case.shape_of(other))


def _pair(relation: Relation) -> str:
    return " and ".join(relation.between)


_MISSES: Final[dict[RelationKind, Callable[[CheckCase, Relation, BaseGeometry, BaseGeometry], Miss | None]]] = {
    "touching": _touching,
    "near": _near,
    "apart": _apart,
    "in_view": _in_view,
    "out_of_view": _out_of_view,
    "faces": _faces,
    "accessible": _accessible,
}
_UNITS: Final[dict[RelationKind, str]] = {
    "touching": "ft",
    "near": "ft",
    "apart": "ft",
    "in_view": "share",
    "out_of_view": "share",
    "faces": "pair",
    "accessible": "fault",
}
