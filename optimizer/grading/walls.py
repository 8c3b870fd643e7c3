"""Walls that hold the ground at the edges of paved rooms, and guards where one could fall."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from optimizer.catalogue.steps import needs_guard, step_rules, wall_needs_permit
from optimizer.grading.edges import BUILT, Strip
from optimizer.grading.flights import Flight
from optimizer.grading.paved import Paved
from optimizer.site import Point


@dataclass(frozen=True, slots=True)
class Wall:
    """A wall along a room's edge: fill of a high room, or ground beside a low one.

    `height_ft` is the greatest along it. The permit is judged from the bottom of a footing 1 ft under the lower
    ground. Between two rooms the wall is the higher room's, and a flight's width is taken off its length.
    """

    room: str
    line: tuple[Point, ...]
    length_ft: float
    height_ft: float
    face_sqft: float
    needs_permit: bool


@dataclass(frozen=True, slots=True)
class Guard:
    """Length of a room's edges that stand more than 30 in above what lies within 3 ft."""

    room: str
    length_ft: float


def walls_along(
    paved: Paved, strips: Sequence[Strip], levels_ft: Sequence[float], flights: Sequence[Flight]
) -> Iterator[Wall]:
    """A wall along every edge whose mean level difference is more than a bank takes (8 in)."""
    for strip in strips:
        heights = _heights(strip, levels_ft)
        if heights is None or heights.mean() * 12 <= step_rules().bank_in + 1e-9:
            continue
        length, height = strip.length_ft - _opening_ft(paved, strip, flights), float(heights.max())
        if length > 0:
            face = length * float(heights.mean())
            room = paved.rooms[strip.room].name
            yield Wall(room, strip.line, length, height, face, wall_needs_permit(height))


def _heights(strip: Strip, levels_ft: Sequence[float]) -> np.ndarray | None:
    """Level differences along an edge [ft]; None beside a house, and beside a higher room, whose wall it is."""
    if strip.neighbour >= 0:
        drop = levels_ft[strip.room] - strip.outside_ft
        return drop if drop[0] > 0 else None
    return np.abs(levels_ft[strip.room] - strip.outside_ft) if strip.neighbour != BUILT else None


def _opening_ft(paved: Paved, strip: Strip, flights: Sequence[Flight]) -> float:
    """Width of the flight between two rooms [ft]."""
    if strip.neighbour < 0:
        return 0.0
    names = {paved.rooms[strip.room].name, paved.rooms[strip.neighbour].name}
    return sum(flight.width_ft for flight in flights if set(flight.between) == names)


def guards_along(
    paved: Paved, strips: Sequence[Strip], levels_ft: Sequence[float], flights: Sequence[Flight]
) -> Iterator[Guard]:
    """A guard for each room with an edge to fall from, its flights left open."""
    for number, room in enumerate(paved.rooms):
        own = [strip for strip in strips if strip.room == number]
        length = sum(_guarded_ft(paved, strip, levels_ft, flights) for strip in own)
        if length > 0:
            yield Guard(room.name, length)


def _guarded_ft(paved: Paved, strip: Strip, levels_ft: Sequence[float], flights: Sequence[Flight]) -> float:
    if strip.neighbour == BUILT:
        return 0.0
    drops_in = 12 * (levels_ft[strip.room] - strip.lowest_ft)
    share = sum(needs_guard(float(drop)) for drop in drops_in) / len(drops_in)
    return max(0.0, share * strip.length_ft - _opening_ft(paved, strip, flights)) if share else 0.0
