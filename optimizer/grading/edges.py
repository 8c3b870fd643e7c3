"""What lies outside each edge of the paved rooms: open ground, a lower or higher room, a house."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.catalogue.steps import step_rules
from optimizer.grading.paved import Paved, built, yard
from optimizer.layout import FRONT_VECTORS, Front, side_ends
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
    ends: tuple[Point, Point]
    length_ft: float
    outside_ft: NDArray[np.float64]
    lowest_ft: NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Edge:
    room: int
    side: Front
    start: NDArray[np.float64]
    along: NDArray[np.float64]
    count: int

    @property
    def middles(self) -> NDArray[np.float64]:
        shares = (np.arange(self.count) + 0.5) / self.count
        return self.start + shares[:, None] * self.along

    def at(self, part: int) -> Point:
        x, y = self.start + self.along * part / self.count
        return (float(x), float(y))


def strips_of(paved: Paved, levels_ft: Sequence[float]) -> tuple[Strip, ...]:
    """All edges of all paved rooms, cut where the neighbour changes."""
    edges = [_edge(paved, room, side) for room in range(len(paved.rooms)) for side in SIDES]
    if not edges:
        return ()
    outward = np.concatenate([np.tile(FRONT_VECTORS[e.side], (e.count, 1)) for e in edges])
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
    start, end = (np.array(point, dtype=np.float64) for point in side_ends(paved.rooms[room].placement, side))
    return _Edge(room, side, start, end - start, max(1, round(float(np.hypot(*(end - start))) / _PIECE_FT)))


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
        ends = (edge.at(parts[0]), edge.at(parts[-1] + 1))
        length = float(np.hypot(*edge.along)) * len(parts) / edge.count
        yield Strip(edge.room, edge.side, kind, ends, length, outside[parts], lowest[parts])
