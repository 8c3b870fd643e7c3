"""What lies outside each edge of the paved rooms: open ground, a lower or higher room, a house. A circle has a quarter
of its edge on each side.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import atan2, pi
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.catalogue.steps import step_rules
from optimizer.grading.paved import Paved, built, yard
from optimizer.layout import FRONT_VECTORS, Front, radius_ft, side_ends
from optimizer.layout.shapes import SIDES
from optimizer.site import Point

OPEN: Final = -1
BUILT: Final = -2
BEYOND: Final = -3
"""Neighbours that are no room: open ground, a house or a door's landing, ground beyond the boundary."""
_OUTSIDE_FT: Final = 0.5  # how far from the edge the ground just outside is taken
_PIECE_FT: Final = 1.0  # an edge is looked at about this often


@dataclass(frozen=True, slots=True)
class Strip:
    """A piece of one edge with one neighbour all along: a room's number, `OPEN`, `BUILT` or `BEYOND`.

    `outside_ft` is the level just outside at the middle of each of its equal parts, `lowest_ft` the lowest within the
    reach of a guard, both above the datum.
    """

    room: int
    side: Front
    neighbour: int
    line: tuple[Point, ...]
    """Its two ends; of a quarter circle all points along it."""
    length_ft: float
    outside_ft: NDArray[np.float64]
    lowest_ft: NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Edge:
    room: int
    side: Front
    points: NDArray[np.float64]
    """Ends of its equal parts, counter-clockwise round the room, shape (count + 1, 2)."""
    middles: NDArray[np.float64]
    outward: NDArray[np.float64]
    """Of each part its middle and the unit vector that points out, shape (count, 2)."""
    length_ft: float

    @property
    def count(self) -> int:
        return len(self.middles)

    def line(self, first: int, last: int) -> tuple[Point, ...]:
        """From the end of one part to that of another: straight, or along the circle."""
        is_straight = bool((self.outward == self.outward[0]).all())
        found = self.points[[first, last]] if is_straight else self.points[first : last + 1]
        return tuple((float(x), float(y)) for x, y in found)


def strips_of(paved: Paved, levels_ft: Sequence[float]) -> tuple[Strip, ...]:
    """All edges of all paved rooms, cut where the neighbour changes."""
    edges = [_edge(paved, room, side) for room in range(len(paved.rooms)) for side in SIDES]
    if not edges:
        return ()
    outward = np.concatenate([e.outward for e in edges])
    middles = np.concatenate([e.middles for e in edges])
    neighbour, outside = _looked_at(paved, levels_ft, middles + _OUTSIDE_FT * outward)
    far_neighbour, far = _looked_at(paved, levels_ft, middles + step_rules().guard_reach_in / 12 * outward)
    is_lower = (far_neighbour != BUILT) & (far < outside) & (neighbour == OPEN)
    lowest = np.where(is_lower, far, outside)
    first = np.cumsum([0, *(e.count for e in edges)])
    return tuple(
        strip
        for edge, at in zip(edges, first[:-1], strict=True)
        for strip in _cut(
            edge, neighbour[at : at + edge.count], outside[at : at + edge.count], lowest[at : at + edge.count]
        )
    )


def _edge(paved: Paved, room: int, side: Front) -> _Edge:
    placement = paved.rooms[room].placement
    if placement.is_circle:
        return _quarter(room, side, placement.centre, radius_ft(placement))
    start, end = (np.array(point, dtype=np.float64) for point in side_ends(placement, side))
    length_ft = float(np.hypot(*(end - start)))
    count = max(1, round(length_ft / _PIECE_FT))
    points = start + np.linspace(0.0, 1.0, count + 1)[:, None] * (end - start)
    middles = start + ((np.arange(count) + 0.5) / count)[:, None] * (end - start)
    outward = np.tile(np.array(FRONT_VECTORS[side], dtype=np.float64), (count, 1))
    return _Edge(room, side, points, middles, outward, length_ft)


def _quarter(room: int, side: Front, centre: Point, radius_ft: float) -> _Edge:
    """A quarter of a circle round the axis point of a side."""
    length_ft = pi / 2 * radius_ft
    count = max(2, round(length_ft / _PIECE_FT))
    first = atan2(FRONT_VECTORS[side][1], FRONT_VECTORS[side][0]) - pi / 4
    ends, between = (first + pi / 2 * shares / count for shares in (np.arange(count + 1), np.arange(count) + 0.5))
    outward = np.stack([np.cos(between), np.sin(between)], axis=1)
    points = np.array(centre) + radius_ft * np.stack([np.cos(ends), np.sin(ends)], axis=1)
    return _Edge(room, side, points, np.array(centre) + radius_ft * outward, outward, length_ft)


def _looked_at(
    paved: Paved, levels_ft: Sequence[float], points: NDArray[np.float64]
) -> tuple[NDArray[np.intp], NDArray[np.float64]]:
    """Neighbour at each of the points, and the level there [ft]."""
    rooms = paved.index_at(points)
    marks = shapely.points(points)
    site = paved.site
    other = np.where(shapely.covers(yard(site), marks), OPEN, BEYOND)
    other = np.where(shapely.covers(built(site), marks), BUILT, other)
    z = np.where(rooms >= 0, np.array(levels_ft)[rooms], paved.ground.z_ft(points))
    return np.where(rooms >= 0, rooms, other), z


def _cut(
    edge: _Edge, neighbour: NDArray[np.intp], outside: NDArray[np.float64], lowest: NDArray[np.float64]
) -> Iterator[Strip]:
    for kind, group in groupby(range(edge.count), key=lambda part: int(neighbour[part])):
        parts = list(group)
        line, length = edge.line(parts[0], parts[-1] + 1), edge.length_ft * len(parts) / edge.count
        yield Strip(edge.room, edge.side, kind, line, length, outside[parts], lowest[parts])
