"""How the paved ways run: their bends, how far round they lead, and how much of them there is."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, degrees, dist
from typing import NamedTuple

from optimizer.brief import Trip
from optimizer.circulation import MAIN_COUNT, Leg, Way
from optimizer.site import Point

_LEAST_FT = 0.01
_LEAST_BEND_DEG = 20.0  # a slighter turn is no bend to who walks; common practice, no source


MOST_BENDS = 2
"""A main way has at most so many bends; common practice, no source."""
MOST_DETOUR = 1.3
"""A main way is at most so many times the straight line; common practice, no source."""


class WayRun(NamedTuple):
    """How a main way runs between its ends: bends outside rooms, and length over the straight line."""

    start: str
    end: str
    bends: int
    detour: float

    @property
    def off(self) -> float:
        """Bends beyond two, and tenths of the straight line beyond 1.3 times it."""
        return max(0, self.bends - MOST_BENDS) + 10 * max(0.0, self.detour - MOST_DETOUR)


@dataclass(frozen=True, slots=True)
class PathMeasures:
    """Paved area of paths [sq ft], length of their legs [ft], and how each main way runs."""

    area_sqft: float = 0.0
    length_ft: float = 0.0
    main: tuple[WayRun, ...] = ()

    @property
    def off(self) -> float:
        """What main ways bend and lead round too much, together."""
        return sum(run.off for run in self.main)


def path_measures(trips: Sequence[Trip], ways: Sequence[Way], legs: Sequence[Leg], *, area_sqft: float) -> PathMeasures:
    """Measures of a layout's paths."""
    often = {(trip.start, trip.end) for trip in trips if trip.count >= MAIN_COUNT}
    length = sum(dist(a, b) for leg in legs for a, b in pairwise(leg.points))
    runs = (_run(way) for way in ways if way.between in often)
    return PathMeasures(round(area_sqft, 2), round(length, 2), tuple(runs))


def _run(way: Way) -> WayRun:
    outside = way.points[1:-1]
    straight = dist(way.points[0], way.points[-1])
    return WayRun(*way.between, bends_of(outside), round(way.length_ft / straight, 3) if straight else 1.0)


def bends_of(points: Sequence[Point]) -> int:
    """Bends of a line."""
    headings = [degrees(atan2(b[1] - a[1], b[0] - a[0])) for a, b in pairwise(points) if dist(a, b) > _LEAST_FT]
    return sum(abs((after - before + 180) % 360 - 180) > _LEAST_BEND_DEG for before, after in pairwise(headings))
