"""How far one walks from a door or entrance to anywhere in the yard while no room stands in it."""

from functools import lru_cache
from typing import Final

import numpy as np
import scipy
import shapely
from numpy.typing import NDArray

from optimizer.circulation.ground import taken_ground
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import SLACK, Cells
from optimizer.engine.grid.raster import covered
from optimizer.fields.site_walls import walls_for_feet
from optimizer.site import Point

SLACK_FT: Final = 3.0
"""What lies between a door's middle and the middle of the nearest cell, at both ends."""
_STEPS = ((0, 1, 1.0), (1, 0, 1.0), (1, 1, 2**0.5), (1, -1, 2**0.5))


def walked_ft(context: Context, at: Point, x: NDArray[np.float64], y: NDArray[np.float64]) -> NDArray[np.float64]:
    """Length of the way from a posed point to posed points, round buildings, walls and kept-out ground in steps of 45
    degrees [ft]; infinite where none leads.
    """
    return _at(context, _way_ft(context, at), x, y)


@lru_cache(maxsize=32)
def _way_ft(context: Context, at: Point) -> NDArray[np.float64]:
    """Shortest way from a point to the middle of each cell in steps of 45 degrees [ft], shape (rows, columns)."""
    free = _free(context)
    away = np.hypot(*np.moveaxis(_middles(context) - at, -1, 0))
    # Rounded, so that of cells as near the same one is taken in every pose.
    start = int(np.argmin(np.round(np.where(free, away, np.inf), 6)))
    return np.asarray(scipy.sparse.csgraph.dijkstra(_steps(context), directed=False, indices=start).reshape(free.shape))


@lru_cache(maxsize=4)
def _steps(context: Context) -> "scipy.sparse.csr_array":
    """Lengths of the steps between the middles of free cells [ft]; none leads through a wall."""
    free, middles = _free(context), _middles(context)
    numbers = np.arange(free.size).reshape(free.shape)
    first, second, lengths = [], [], []
    for down, right, length in _STEPS:
        rows, columns = slice(0, free.shape[0] - down), slice(max(0, -right), free.shape[1] - max(0, right))
        ends = slice(down, None), slice(max(0, right), free.shape[1] + min(0, right))
        joined = free[rows, columns] & free[ends]
        joined[joined] = ~_walled_off(context, middles[rows, columns][joined], middles[ends][joined])
        first.append(numbers[rows, columns][joined])
        second.append(numbers[ends][joined])
        lengths.append(np.full(len(first[-1]), length * context.lattice.step_ft))
    return scipy.sparse.csr_array(
        (np.concatenate(lengths), (np.concatenate(first), np.concatenate(second))), shape=(free.size, free.size)
    )


def _walled_off(context: Context, starts: NDArray[np.float64], ends: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Whether a wall stands between points (n, 2)."""
    walls = walls_for_feet(context.site)
    if not walls:
        return np.zeros(len(starts), dtype=np.bool_)
    wall = shapely.union_all(list(walls))
    shapely.prepare(wall)
    return np.asarray(shapely.intersects(wall, shapely.linestrings(np.stack([starts, ends], axis=1))))


def _middles(context: Context) -> NDArray[np.float64]:
    """Middles of the cells, shape (rows, columns, 2) [ft]."""
    lattice = context.lattice
    x = lattice.x0_ft + lattice.step_ft * (np.arange(lattice.columns) + 0.5)
    y = lattice.y0_ft + lattice.step_ft * (np.arange(lattice.rows) + 0.5)
    return np.stack(np.meshgrid(x, y), axis=-1)


def _free(context: Context) -> Cells:
    taken = [covered(context.lattice, shape) for shape in taken_ground(context.site)]
    outside = ~covered(context.lattice, context.boundary)
    return np.asarray(~np.logical_or.reduce([outside, *taken]))


def _at(
    context: Context, cells: NDArray[np.float64], x: NDArray[np.float64], y: NDArray[np.float64]
) -> NDArray[np.float64]:
    """Values of the cells in which points lie."""
    lattice = context.lattice
    column = np.clip(((x - lattice.x0_ft) / lattice.step_ft + SLACK).astype(np.int64), 0, cells.shape[1] - 1)
    row = np.clip(((y - lattice.y0_ft) / lattice.step_ft + SLACK).astype(np.int64), 0, cells.shape[0] - 1)
    return np.asarray(cells[row, column])
