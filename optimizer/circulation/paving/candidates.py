"""Candidate lines between points: in steps of 45 degrees, with at most two bends, on the ground all along."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.circulation.ground import Ground
from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_SLANTED: Final = 40.0  # eighths: beside a slanted wall, where nothing else fits, a way runs along it
_EDGE_FT: Final = 0.01  # lines along the edge of an area are beside it
_HALF_DIAGONAL_FT: Final = 0.75  # of a cell of 1 ft, and a little more
_SHARES: Final = np.array([0.0, 0.15, 0.35, 0.5, 0.65, 0.85])[:, None]  # where along a step the cells are asked
_TOUCH_FT: Final = 1e-6  # lines along the ground's own edge are on it, whatever rounding says


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


@dataclass(frozen=True, slots=True, eq=False)
class Nearby:
    """Cells of 1 ft that lie on a ground or so near that a point in them may: what spares most exact questions."""

    left_ft: float
    low_ft: float
    cells: NDArray[np.bool_]

    def may_hold(self, points: Coordinates) -> NDArray[np.bool_]:
        """Whether points, shape (..., 2), may lie on the ground; where not, they surely do not."""
        column = np.floor(points[..., 0] - self.left_ft).astype(np.int64)
        row = np.floor(points[..., 1] - self.low_ft).astype(np.int64)
        rows, columns = self.cells.shape
        inside = (row >= 0) & (row < rows) & (column >= 0) & (column < columns)
        return np.asarray(inside & self.cells[np.clip(row, 0, rows - 1), np.clip(column, 0, columns - 1)])


def nearby(ground: Ground) -> Nearby:
    """Cells of a ground."""
    left, low, right, top = ground.bounds if not ground.is_empty else (0.0, 0.0, 0.0, 0.0)
    left, low = floor(left), floor(low)
    x, y = np.meshgrid(left + np.arange(ceil(right) - left + 1) + 0.5, low + np.arange(ceil(top) - low + 1) + 0.5)
    wider = ground.buffer(_HALF_DIAGONAL_FT, quad_segs=2, join_style="mitre")
    shapely.prepare(wider)
    return Nearby(left, low, shapely.contains_xy(wider, x, y))


def lines_between(ground: Ground, points: Coordinates, pairs: NDArray[np.int64], near: Nearby | None = None) -> Lines:
    """Every candidate line between pairs of points, shape (n, 2), that stays on the ground.

    `near` are the ground's cells, where the caller has them already.
    """
    lines = _all_lines(points, pairs)
    steps = np.abs(np.diff(lines.corners, axis=1)).sum(axis=(1, 2))
    lines = lines.only(steps > _EVEN_FT)
    near = near or nearby(ground)
    # Most lines bend off the ground: their corners are asked first, since that is quickest.
    lines = lines.only(np.asarray(near.may_hold(lines.corners[:, 1:3]).all(axis=1)))
    samples = lines.corners[:, :-1, None] * (1 - _SHARES) + lines.corners[:, 1:, None] * _SHARES
    return _on(ground, lines.only(np.asarray(near.may_hold(samples).all(axis=(1, 2)))))


def _on(ground: Ground, lines: Lines) -> Lines:
    wider = ground.buffer(_TOUCH_FT, join_style="mitre")
    shapely.prepare(wider)
    return lines.only(shapely.covers(wider, shapely.linestrings(lines.corners)))


def _all_lines(points: Coordinates, pairs: NDArray[np.int64]) -> Lines:
    starts, ends = points[pairs[:, 0]], points[pairs[:, 1]]
    away = ends - starts
    least = np.abs(away).min(axis=1)
    is_straight = (least < _EVEN_FT) | (np.abs(np.abs(away[:, 0]) - np.abs(away[:, 1])) < _EVEN_FT)
    slant = least[:, None] * np.sign(away)
    rest = (away - slant) / 2
    straight = (starts, ends, ends, ends)
    bent = (
        (starts, starts + slant, ends, ends),
        (starts, ends - slant, ends, ends),
        (starts, np.stack([ends[:, 0], starts[:, 1]], axis=1), ends, ends),
        (starts, np.stack([starts[:, 0], ends[:, 1]], axis=1), ends, ends),
        (starts, starts + rest, starts + rest + slant, ends),
        straight,
    )
    parts = [(is_straight, straight), *((~is_straight, corners) for corners in bent)]
    return Lines(
        np.concatenate([pairs[kept, 0] for kept, _ in parts]),
        np.concatenate([pairs[kept, 1] for kept, _ in parts]),
        np.concatenate([np.stack(corners, axis=1)[kept] for kept, corners in parts]),
    )


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
    starts, steps = lines.corners[:, :-1], np.diff(lines.corners, axis=1)
    lengths = np.hypot(steps[..., 0], steps[..., 1])
    total = np.zeros(len(lines.first))
    for area in areas:
        enter, leave = np.zeros(lengths.shape), np.ones(lengths.shape)
        for corner, edge in _edges(area):
            # Inside lies to the left of every edge: where a step crosses it, it enters or leaves.
            ahead = edge[0] * steps[..., 1] - edge[1] * steps[..., 0]
            depth = edge[0] * (starts[..., 1] - corner[1]) - edge[1] * (starts[..., 0] - corner[0]) - _EDGE_FT
            share = -depth / np.where(np.abs(ahead) < _EVEN_FT, 1.0, ahead)
            enter = np.where(ahead > _EVEN_FT, np.maximum(enter, share), enter)
            leave = np.where(ahead < -_EVEN_FT, np.minimum(leave, share), leave)
            leave = np.where((np.abs(ahead) <= _EVEN_FT) & (depth < 0), -1.0, leave)
        total += (np.maximum(0.0, leave - enter) * lengths).sum(axis=1)
    return total


def _edges(area: Polygon) -> list[tuple[Coordinates, Coordinates]]:
    """Corners of a convex area, counter-clockwise, each with the unit vector to the next."""
    ring = shapely.get_coordinates(shapely.orient_polygons(area).exterior)
    steps = np.diff(ring, axis=0)
    return [(corner, step / np.hypot(*step)) for corner, step in zip(ring[:-1], steps, strict=True) if step.any()]
