"""Why a vehicle finds no way in, by the names of what is in its way."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal

import shapely
from shapely import LineString
from shapely import Point as At
from shapely.geometry.base import BaseGeometry

from optimizer.derived.boxes import jambs
from optimizer.derived.futures.course import Course
from optimizer.derived.futures.drive import Drive, Stuck, drive
from optimizer.derived.futures.obstacles import Obstacle
from optimizer.layout import TOLERANCE_FT
from optimizer.site import Point, Ring

_ANY_SLOPE: Final = 10.0
"""Rise per run that no ground has."""
_MOST_BLAMED: Final = 3
_HALVINGS: Final = 6
_HAIR_FT: Final = 0.1
_LEAST_SQFT: Final = 0.05

Because = Literal["gate", "width", "slope", "turns"]


@dataclass(frozen=True, slots=True)
class Barred:
    """Why a vehicle so wide does not come in.

    Every gate is too narrow, or there is none (`gate`); the ground between the things `by` is (`width`); its slope is
    too much (`slope`); it cannot turn between them (`turns`). `found_ft` is the width that there is. `grounds` are
    outlines of each of the things `by`, and `at` is where the vehicle comes no farther, None where it does
    not come in at all.
    """

    vehicle: str
    width_ft: float
    because: Because
    by: tuple[str, ...] = ()
    found_ft: float | None = None
    grounds: tuple[tuple[Ring, ...], ...] = ()
    at: Point | None = None


def why_barred(course: Course, stuck: Stuck, there: Sequence[Obstacle]) -> Barred:
    """What bars a vehicle that came no farther than `stuck`; obstacles lie as the course does."""
    one = course.vehicle
    if all(gate.width_ft < one.width_ft - TOLERANCE_FT for gate in course.gates):
        widest = max(gate.width_ft for gate in course.gates)
        return Barred(one.name, one.width_ft, "gate", tuple(gate.name for gate in course.gates), widest)
    if not _is_joined(course.middles, course):
        gap = _gap(course)
        by, middle = tuple(_beside(course, there, gap)), gap.centroid
        return Barred(one.name, one.width_ft, "width", by, _widest_ft(course), at=(middle.x, middle.y))
    is_level = course.steepest <= one.steepest
    if not is_level and isinstance(drive(replace(course, vehicle=replace(one, steepest=_ANY_SLOPE))), Drive):
        return Barred(one.name, one.width_ft, "slope", at=stuck.at)
    return Barred(one.name, one.width_ft, "turns", tuple(_touched(stuck, there)), at=stuck.at)


def _is_joined(middles: BaseGeometry, course: Course) -> bool:
    """Whether one piece of ground for the vehicle's middle leads from a gate to the goal."""
    return any(_comes_from(part, course) and _comes_to(part, course) for part in shapely.get_parts(middles))


def _comes_from(part: BaseGeometry, course: Course) -> bool:
    # A line through the gate, not its middle point: something may stand before a part of it.
    return any(part.intersects(LineString(jambs(gate.at, gate.inward, gate.width_ft))) for gate in course.gates)


def _comes_to(part: BaseGeometry, course: Course) -> bool:
    return bool(part.distance(course.goal) <= course.vehicle.length_ft / 2)


def _gap(course: Course) -> BaseGeometry:
    """The shortest line between the ground before what bars the way and the ground behind it."""
    parts = shapely.get_parts(course.middles)
    before = shapely.union_all([part for part in parts if _comes_from(part, course)])
    behind = shapely.union_all([part for part in parts if _comes_to(part, course)])
    if before.is_empty or behind.is_empty:
        return course.goal if behind.is_empty else At(course.gates[0].at)
    return shapely.shortest_line(before, behind)


def _beside(course: Course, there: Sequence[Obstacle], gap: BaseGeometry) -> Iterator[str]:
    """Names of what stands on both sides of a gap."""
    # Somewhere in the gap the middle has less than half a width to one side: what stands nearest is named first.
    reach_ft = course.vehicle.width_ft / 2 + _HAIR_FT
    off = sorted((round(float(gap.distance(o.ground)), 2), o.name) for o in there if not o.ground.is_empty)
    yield from list(dict.fromkeys(name for away_ft, name in off if away_ft <= reach_ft))[:_MOST_BLAMED]


def _widest_ft(course: Course) -> float:
    """Widest thing that would come through, to the tenth of a foot below [ft]."""
    low, high = 0.0, course.vehicle.width_ft
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        joined = _is_joined(course.ground.buffer(TOLERANCE_FT - middle / 2, quad_segs=2), course)
        low, high = (middle, high) if joined else (low, middle)
    return int(low * 10) / 10


def _touched(stuck: Stuck, there: Sequence[Obstacle]) -> Iterator[str]:
    """Names of what a vehicle runs against where it gets stuck, the thing that stops most of its moves first."""
    stopped: dict[str, int] = {}
    for obstacle in there:
        hits = sum(sweep.intersection(obstacle.ground).area > _LEAST_SQFT for sweep in stuck.blocked)
        if hits:
            stopped[obstacle.name] = stopped.get(obstacle.name, 0) + hits
    yield from sorted(stopped, key=lambda name: (-stopped[name], name))[:_MOST_BLAMED]
