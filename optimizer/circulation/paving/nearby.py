"""Which lines lie on a ground: its cells of 1 ft spare most exact questions."""

from dataclasses import dataclass
from math import ceil, floor
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.ground import Ground
from optimizer.circulation.visibility import Coordinates

_NEAR_FT: Final = 0.75  # half the diagonal of a cell, and a little more
_SHARES: Final = (0.5, 0.15, 0.85, 0.35, 0.65)  # where along a slanted step the cells are asked
_TOUCH_FT: Final = 1e-6  # lines along the ground's own edge are on it, whatever rounding says
_KINDS: Final = np.array([2, 0, 3, 1, 0, 1, 3, 0, 2], dtype=np.int32)
"""Which count a step asks, by its sign along x and along y: of a row, a column, a rising or a falling diagonal."""
Marks = NDArray[np.bool_]
Cell = tuple[NDArray[np.int32], NDArray[np.int32]]
"""Columns and rows of cells."""
Counts = NDArray[np.int32]


@dataclass(frozen=True, slots=True, eq=False)
class Nearby:
    """A ground and its cells, round which there is a ring of cells that lie off it.

    A point outside the `near` cells surely lies off the ground. `far` counts the cells that are not near, from the edge
    up to each: along rows and columns, up and down the diagonals, one after the other; between two cells there is none
    where their counts are the same.
    """

    ground: BaseGeometry
    left_ft: float
    low_ft: float
    near: Marks
    far: Counts

    def cells(self, points: Coordinates) -> Cell:
        """Column and row of the cell of each of the points (n, 2); of one outside those of the ring's nearest."""
        rows, columns = self.near.shape
        # What lies left of the ring or below it is cut to it whichever way it is rounded.
        column = np.clip((points[:, 0] - self.left_ft).astype(np.int32), 0, columns - 1)
        row = np.clip((points[:, 1] - self.low_ft).astype(np.int32), 0, rows - 1)
        return column, row

    def has(self, cell: Cell) -> Marks:
        """Whether points in these cells may lie on the ground; where not, they surely do not."""
        column, row = cell
        return np.asarray(self.near.ravel()[row * self.near.shape[1] + column])

    def may_run(self, start: Cell, end: Cell) -> Marks:
        """Whether steps along an axis or at 45 degrees between near cells may lie on the ground: by every cell."""
        (column, row), (last_column, last_row) = start, end
        across, up, columns = last_column - column, last_row - row, self.near.shape[1]
        first, last = row * columns + column, last_row * columns + last_column
        # Of as many feet along a diagonal each begins in a cell of that diagonal.
        feet, to_x, to_y = np.minimum(np.abs(across), np.abs(up)), np.sign(across), np.sign(up)
        last = np.where(feet > 0, first + feet * (to_y * columns + to_x), last)
        count = _KINDS[3 * to_x + to_y + 4] * self.near.size
        return np.asarray(self.far[count + first] == self.far[count + last])

    def may_lie(self, starts: Coordinates, ends: Coordinates) -> Marks:
        """Whether steps at any angle between near points may lie on the ground: by a few cells on the way."""
        result = np.ones(len(starts), dtype=np.bool_)
        for share in _SHARES:
            result &= self.has(self.cells(starts * (1 - share) + ends * share))
        return result

    def covers(self, corners: Coordinates) -> Marks:
        """Whether lines, given by their corners (n, 4, 2), lie on the ground, exactly."""
        return np.asarray(shapely.covers(self.ground, shapely.linestrings(corners)))


def nearby(ground: Ground) -> Nearby:
    """Cells of a ground."""
    left, low, right, top = ground.bounds if not ground.is_empty else (0.0, 0.0, 0.0, 0.0)
    left, low = floor(left) - 2, floor(low) - 2
    wider = ground.buffer(_NEAR_FT, quad_segs=2, join_style="mitre")
    near = _cells_in(wider, left, low, (ceil(top) - low + 3, ceil(right) - left + 3))
    exact = ground.buffer(_TOUCH_FT, join_style="mitre")
    shapely.prepare(exact)
    return Nearby(exact, left, low, near, _counts(~near))


def _cells_in(area: BaseGeometry, left_ft: int, low_ft: int, shape: tuple[int, int]) -> Marks:
    """Cells whose middles lie in an area; whether one on its edge does is open. None on the rim is marked."""
    rows, columns = shape
    rings = shapely.get_rings(shapely.get_parts(area))
    corners, of = shapely.get_coordinates(rings, return_index=True)
    is_edge = of[1:] == of[:-1]
    # In cells, so that middles are whole numbers; an edge is crossed by the rows from its lower end up to its upper.
    (x0, y0), (x1, y1) = ((ends[is_edge] - (left_ft + 0.5, low_ft + 0.5)).T for ends in (corners[:-1], corners[1:]))
    row = np.arange(rows)[:, None]
    crossed, edge = np.nonzero((row >= np.minimum(y0, y1)) & (row < np.maximum(y0, y1)))
    at = x0[edge] + (crossed - y0[edge]) * (x1[edge] - x0[edge]) / (y1[edge] - y0[edge])
    crossings = np.zeros((rows, columns + 1), dtype=np.int64)
    np.add.at(crossings, (crossed, np.clip(np.ceil(at), 0, columns).astype(np.int64)), 1)
    cells = np.cumsum(crossings[:, :-1], axis=1) % 2 == 1
    cells[[0, -1]] = cells[:, [0, -1]] = False
    return np.asarray(cells)


def _counts(far: Marks) -> Counts:
    """Counts of marked cells from the edge up to each: along rows, along columns, and along both diagonals."""
    ahead = far.astype(np.int32)
    rising, falling = ahead.copy(), ahead.copy()
    for row in range(1, len(ahead)):
        rising[row, 1:] += rising[row - 1, :-1]
        falling[row, :-1] += falling[row - 1, 1:]
    counts = (np.cumsum(ahead, axis=1), np.cumsum(ahead, axis=0), rising, falling)
    return np.concatenate([count.ravel() for count in counts]).astype(np.int32)
