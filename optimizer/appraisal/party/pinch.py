"""Where the party's walks are narrowest, and what widening a way costs."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from math import ceil, dist
from typing import Final, cast

import shapely
from shapely import LineString, Polygon

from optimizer.appraisal.party.measures import Grade, Pinch, Remedy
from optimizer.catalogue import PriceBook, best_grade_flow, passing_ft, to_cents, walkway_grade
from optimizer.circulation import Leg
from optimizer.fields import site_shapes
from optimizer.layout import Placed
from optimizer.scenario import Scenario
from optimizer.site import Site

_STEP_FT: Final = 0.5
"""Ways are widened by whole steps of this."""
_SAME_FT: Final = 0.01
_OVERLAP_SQFT: Final = 0.5


@dataclass(frozen=True, slots=True)
class Walk:
    """People who pass each link between places on their way to a phase, and the time that it takes them."""

    phase: str
    minutes: float
    people: Mapping[frozenset[str], int]


def leg_pinches(legs: Sequence[Leg], walks: Sequence[Walk]) -> Iterator[tuple[Pinch, Leg]]:
    """Flow on each paved leg that anybody of the party walks on, in each walk."""
    for leg in legs:
        links = {frozenset(pair) for pair in leg.trips}
        for walk in walks:
            people = sum(walk.people.get(link, 0) for link in links)
            if people:
                yield _pinch(leg.trips[0], "way", leg.width_ft, walk, people), leg


def edge_pinches(edges: Mapping[frozenset[str], float], walks: Sequence[Walk]) -> Iterator[Pinch]:
    """Flow over each edge that two rooms share [ft], where no paved leg joins them."""
    for link, width_ft in edges.items():
        first, second = sorted(link)
        for walk in walks:
            if people := walk.people.get(link, 0):
                yield _pinch((first, second), "edge", width_ft, walk, people)


def badness(pinch: Pinch) -> tuple[Grade, bool, float]:
    """How bad a pinch is: by grade, then by whether two can pass each other, then by flow."""
    return pinch.grade, pinch.width_ft < passing_ft() - _SAME_FT, pinch.flow


def _pinch(between: tuple[str, str], at: str, width_ft: float, walk: Walk, people: int) -> Pinch:
    flow = round(people / walk.minutes / width_ft, 3)
    grade = cast("Grade", walkway_grade(flow))
    return Pinch(between, "way" if at == "way" else "edge", round(width_ft, 3), walk.phase, flow, grade)


def remedy_of(scenario: Scenario, placed: Placed, book: PriceBook, pinch: Pinch, leg: Leg) -> Remedy | None:
    """What makes a way wide enough for two to pass and for grade A; None where it is so already."""
    wanted = max(passing_ft(), ceil(leg.width_ft * pinch.flow / best_grade_flow() / _STEP_FT) * _STEP_FT)
    if leg.width_ft >= wanted - _SAME_FT:
        return None
    name = f"the way between {pinch.between[0]} and {pinch.between[1]}"
    is_now, to_be = (f"{width_ft / scenario.unit_ft:.3g}" for width_ft in (leg.width_ft, wanted))
    if not _has_land(scenario.site, placed, leg, wanted):
        return Remedy(f"{name} stays {is_now} {scenario.units} wide: the land beside it leaves no more", None)
    length_ft = sum(dist(a, b) for a, b in pairwise(leg.points))
    paving = Decimal(str(round(length_ft * (wanted - leg.width_ft), 2))) * book.of("path paving").price
    amount = to_cents(paving * scenario.brief.budget.factor)
    words = f"widen {name} from {is_now} to {to_be} {scenario.units}: {amount:,.0f} {book.currency} with contingency"
    return Remedy(words, amount)


def _has_land(site: Site, placed: Placed, leg: Leg, width_ft: float) -> bool:
    """Whether the wider strip takes no more of buildings, of rooms that it only passes, and of other people's land."""
    ends = {name for pair in leg.trips for name in pair}
    kept = [room.shape for room in placed if room.name not in ends]
    kept += site_shapes(site).buildings
    boundary = site_shapes(site).boundary
    more = _strip(leg, width_ft).difference(_strip(leg, leg.width_ft))
    taken = float(shapely.area(shapely.intersection(more, kept)).sum()) + more.difference(boundary).area
    return bool(taken <= _OVERLAP_SQFT)


def _strip(leg: Leg, width_ft: float) -> Polygon:
    return LineString(leg.points).buffer(width_ft / 2, cap_style="flat", join_style="mitre")
