"""Candidate lines between points: in steps of 45 degrees, with at most two bends."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.circulation.paving.nearby import Nearby
from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_SLANTED: Final = 40.0  # eighths: beside a slanted wall, where nothing else fits, a way runs along it
_EDGE_FT: Final = 0.01  # lines along the edge of an area are beside it


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """Lines between points: the numbers of their ends, shapes (n,), and their corners, shape (n, 4, 2), the last
    corner repeated where there are fewer.
    """

    first: NDArray[np.int64]
    second: NDArray[np.int64]
    corners: Coordinates

    def only(self, kept: NDArray[np.bool_] | NDArray[np.int64]) -> "Lines":
        """The lines that are marked, or of these numbers."""
        return Lines(self.first[kept], self.second[kept], self.corners[kept])

    @property
    def length_ft(self) -> Coordinates:
        """Length of each line [ft]."""
        steps = np.diff(self.corners, axis=1)
        return np.asarray(np.hypot(steps[..., 0], steps[..., 1]).sum(axis=1))


def lines_between(near: Nearby, points: Coordinates, pairs: NDArray[np.int64]) -> Lines:
    """Every candidate line between pairs of points, shape (n, 2), that may lie on the ground by its cells."""
    away = np.abs(points[pairs[:, 0]] - points[pairs[:, 1]])
    lines, is_slanted = _all_lines(points, pairs[away[:, 0] + away[:, 1] > _EVEN_FT])
    return lines.only(near.may_hold(lines.corners, is_slanted))


def _all_lines(points: Coordinates, pairs: NDArray[np.int64]) -> tuple[Lines, NDArray[np.bool_]]:
    """Lines of each pair, and which of them are slanted.

    Along an axis or at 45 degrees there is the straight line alone; else five with bends, at 45 degrees first or last,
    square either way, or at 45 degrees in the middle, and last the slanted one.
    """
    starts, ends = points[pairs[:, 0]], points[pairs[:, 1]]
    away = ends - starts
    across = np.abs(away)
    least = np.minimum(across[:, 0], across[:, 1])
    is_straight = (least < _EVEN_FT) | (np.abs(across[:, 0] - across[:, 1]) < _EVEN_FT)
    slant = least[:, None] * np.sign(away)
    rest = (away - slant) / 2
    square = np.stack([ends[:, 0], starts[:, 1], starts[:, 0], ends[:, 1]], axis=1)
    singly = (starts + slant, ends - slant, square[:, :2], square[:, 2:])
    bends = (*((bend, ends) for bend in singly), (starts + rest, starts + rest + slant), (ends, ends))
    straight, bent = np.flatnonzero(is_straight), np.flatnonzero(~is_straight)
    of = np.concatenate([straight, *[bent] * len(bends)])
    corners = np.empty((len(of), 4, 2))
    corners[:, 0], corners[:, 3] = starts[of], ends[of]
    corners[: len(straight), 1:3] = ends[straight, None]
    by_bends = corners[len(straight) :].reshape(len(bends), len(bent), 4, 2)
    for lines, (second, third) in zip(by_bends, bends, strict=True):
        lines[:, 1], lines[:, 2] = second[bent], third[bent]
    return Lines(pairs[of, 0], pairs[of, 1], corners), np.arange(len(of)) >= len(of) - len(bent)


def turns(corners: Coordinates) -> Coordinates:
    """Eighths of a full turn that each line bends through; one at any other angle counts as many of them."""
    steps = np.diff(corners, axis=1)
    across = np.sort(np.abs(steps[:, 0]), axis=1)
    is_slanted = (across[:, 0] > _EVEN_FT) & (across[:, 1] - across[:, 0] > _EVEN_FT)
    bends = _eighths(steps[:, 0], steps[:, 1]) + _eighths(steps[:, 1], steps[:, 2])
    return np.asarray(bends + _SLANTED * is_slanted)


def turn_at(out: Coordinates, heading: Coordinates) -> Coordinates:
    """Eighths of a full turn between a gate's heading out and a line's first step; 0 where either has no length."""
    return _eighths(out, heading)


def _eighths(before: Coordinates, after: Coordinates) -> Coordinates:
    lengths = np.hypot(before[:, 0], before[:, 1]) * np.hypot(after[:, 0], after[:, 1])
    cosine = (before * after).sum(axis=1) / np.where(lengths < _EVEN_FT, 1.0, lengths)
    angle = np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))) / 45.0
    return np.where(lengths < _EVEN_FT, 0.0, angle)


def within_ft(areas: Sequence[Polygon], lines: Lines) -> Coordinates:
    """Length of each line inside convex areas that do not overlap [ft]; along an edge does not count."""
    total = np.zeros(len(lines.first))
    if not areas:
        return total
    bounds, low, high = shapely.bounds(areas)[:, None], lines.corners.min(axis=1), lines.corners.max(axis=1)
    beside = (low >= bounds[..., 2:]) | (high <= bounds[..., :2])
    area, line = np.nonzero(~(beside[..., 0] | beside[..., 1]))
    np.add.at(total, line, _inside_ft(_edges(areas)[area], lines.corners[line]))
    return total


def _inside_ft(edges: Coordinates, corners: Coordinates) -> Coordinates:
    """Length of lines, given by their corners (n, 4, 2), each inside one convex area, given by its edges (n, k, 4)."""
    starts, steps = corners[:, :-1], np.diff(corners, axis=1)
    lengths = np.hypot(steps[..., 0], steps[..., 1])
    enter, leave = np.zeros(lengths.shape), np.ones(lengths.shape)
    for edge in range(edges.shape[1]):
        x, y, along_x, along_y = (edges[:, edge, None, part] for part in range(4))
        # Inside lies to the left of every edge: where a step crosses it, it enters or leaves.
        ahead = along_x * steps[..., 1] - along_y * steps[..., 0]
        depth = along_x * (starts[..., 1] - y) - along_y * (starts[..., 0] - x) - _EDGE_FT
        share = -depth / np.where(np.abs(ahead) < _EVEN_FT, 1.0, ahead)
        enter = np.where(ahead > _EVEN_FT, np.maximum(enter, share), enter)
        leave = np.where(ahead < -_EVEN_FT, np.minimum(leave, share), leave)
        leave = np.where((np.abs(ahead) <= _EVEN_FT) & (depth < 0), -1.0, leave)
    return np.asarray((np.maximum(0.0, leave - enter) * lengths).sum(axis=1))


def _edges(areas: Sequence[Polygon]) -> Coordinates:
    """Edges of convex areas, counter-clockwise: corners with the unit vectors to the next, shape (areas, k, 4).

    An area with fewer than the others has its last edge again.
    """
    rings = [shapely.get_coordinates(shapely.orient_polygons(area).exterior) for area in areas]
    count = max(len(ring) for ring in rings) - 1
    found = np.empty((len(areas), count, 4))
    for number, ring in enumerate(rings):
        steps = np.diff(ring, axis=0)
        edges = np.column_stack([ring[:-1], steps / np.hypot(steps[:, 0], steps[:, 1])[:, None]])
        found[number] = edges[np.minimum(np.arange(count), len(edges) - 1)]
    return found
