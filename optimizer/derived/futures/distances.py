"""The distances that later water keeps on the plan: all that it misses, and of each rule the one nearest to a miss."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely import Polygon

from optimizer.derived.futures.asked import Asked
from optimizer.layout import TOLERANCE_FT
from optimizer.site import Point


@dataclass(frozen=True, slots=True)
class Distance:
    """What `rule` asks of the water's edge towards the thing named, and the `found_ft` that there are along `line`."""

    rule: str
    name: str
    asked_ft: float
    found_ft: float
    line: tuple[Point, ...]

    @property
    def is_kept(self) -> bool:
        """Whether there is as much as is asked."""
        return self.found_ft >= self.asked_ft - TOLERANCE_FT


def distances_of(asked: Sequence[Asked], water: Polygon) -> tuple[Distance, ...]:
    """Distances of a water's edge, the ones that miss most first; of one thing only the one that misses most."""
    found = sorted((_distance(one, water) for one in asked if one.feet > 0), key=_spare)
    return tuple(_worth_showing(found))


def _worth_showing(found: Sequence[Distance]) -> Iterator[Distance]:
    names, rules = set[str](), set[str]()
    for one in found:
        if one.name not in names if not one.is_kept else one.rule not in rules:
            yield one
        names.add(one.name)
        rules.add(one.rule)


def _distance(one: Asked, water: Polygon) -> Distance:
    line = shapely.shortest_line(water, one.ground)
    points = tuple((round(float(x), 3), round(float(y), 3)) for x, y in line.coords)
    return Distance(one.rule, one.name, round(one.feet, 4), round(float(line.length), 4), points)


def _spare(one: Distance) -> tuple[float, str, str]:
    return (round(one.found_ft - one.asked_ft, 3), one.name, one.rule)
