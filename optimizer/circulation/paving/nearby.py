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
_SHARES: Final = np.array([0.15, 0.35, 0.5, 0.65, 0.85])[:, None]  # where along a slanted step the cells are asked
_TOUCH_FT: Final = 1e-6  # lines along the ground's own edge are on it, whatever rounding says
_KINDS: Final = np.array([2, 0, 3, 1, 0, 1, 3, 0, 2], dtype=np.int32)
"""Which count a step asks, by its sign along x and along y: of a row, a column, a rising or a falling diagonal."""
Cells = NDArray[np.bool_]
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
    near: Cells
    far: Counts

    def may_hold(self, corners: Coordinates, is_slanted: Cells) -> NDArray[np.int64]:
        """Numbers of the lines, given by their corners (n, 4, 2), that may lie on the ground; the others surely do not.

        Steps run along an axis or at 45 degrees, and every cell on the way is asked; of slanted lines a few.
        """
        column, row, number = self._cells(corners)
        # Most lines bend off the ground.
        is_near = self.near.ravel()[number]
        kept = np.flatnonzero(is_near[:, 0] & is_near[:, 1] & is_near[:, 2] & is_near[:, 3])
        across, up = np.diff(column[kept], axis=1), np.diff(row[kept], axis=1)
        first, last = number[kept, :-1], number[kept, 1:]
        # Of as many feet along a diagonal each begins in a cell of that diagonal.
        feet = np.minimum(np.abs(across), np.abs(up))
        to_x, to_y = np.sign(across), np.sign(up)
        last = np.where(feet > 0, first + feet * (to_y * self.near.shape[1] + to_x), last)
        count = _KINDS[3 * to_x + to_y + 4] * self.near.size
        is_clear = self.far[count + first] == self.far[count + last]
        is_clear = is_clear[:, 0] & is_clear[:, 1] & is_clear[:, 2]
        slanted = np.flatnonzero(is_slanted[kept])
        samples = corners[kept[slanted], :1] * (1 - _SHARES) + corners[kept[slanted], 3:] * _SHARES
        is_clear[slanted] = self.near.ravel()[self._cells(samples)[2]].all(axis=1)
        return np.asarray(kept[is_clear])

    def covers(self, corners: Coordinates) -> Cells:
        """Whether lines, given by their corners (n, 4, 2), lie on the ground, exactly."""
        return np.asarray(shapely.covers(self.ground, shapely.linestrings(corners)))

    def _cells(self, points: Coordinates) -> tuple[NDArray[np.int32], NDArray[np.int32], NDArray[np.int32]]:
        """Column, row and number of the cell of each point; of one outside those of the ring's nearest."""
        rows, columns = self.near.shape
        # What lies left of the ring or below it is cut to it whichever way it is rounded.
        column = np.clip((points[..., 0] - self.left_ft).astype(np.int32), 0, columns - 1)
        row = np.clip((points[..., 1] - self.low_ft).astype(np.int32), 0, rows - 1)
        return column, row, row * columns + column


def nearby(ground: Ground) -> Nearby:
    """Cells of a ground."""
    left, low, right, top = ground.bounds if not ground.is_empty else (0.0, 0.0, 0.0, 0.0)
    left, low = floor(left) - 2, floor(low) - 2
    wider = ground.buffer(_NEAR_FT, quad_segs=2, join_style="mitre")
    near = _cells_in(wider, left, low, (ceil(top) - low + 3, ceil(right) - left + 3))
    exact = ground.buffer(_TOUCH_FT, join_style="mitre")
    shapely.prepare(exact)
    return Nearby(exact, left, low, near, _counts(~near))


def _cells_in(area: BaseGeometry, left_ft: int, low_ft: int, shape: tuple[int, int]) -> Cells:
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


def _counts(far: Cells) -> Counts:
    """Counts of marked cells from the edge up to each: along rows, along columns, and along both diagonals."""
    ahead = far.astype(np.int32)
    rising, falling = ahead.copy(), ahead.copy()
    for row in range(1, len(ahead)):
        rising[row, 1:] += rising[row - 1, :-1]
        falling[row, :-1] += falling[row - 1, 1:]
    counts = (np.cumsum(ahead, axis=1), np.cumsum(ahead, axis=0), rising, falling)
    return np.concatenate([count.ravel() for count in counts]).astype(np.int32)
