"""Which rectangles on the grid a straight wall runs through."""

from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.anchors import corners_ft
from optimizer.engine.grid.lattice import Cells, Lattice
from optimizer.site import Point

TOUCHING_FT: Final = 0.01
"""What lies so near to an edge runs along it: less than what the check lets pass, more than conversion adds."""


@lru_cache(maxsize=256)
def crossed(lattice: Lattice, start: Point, end: Point, *, width: int, depth: int) -> Cells:
    """Lower left corners from which a rectangle of so many steps has a part of the line inside it, not on its edge."""
    enter, leave = np.zeros((lattice.rows, lattice.columns)), np.ones((lattice.rows, lattice.columns))
    for low, size, first, last in zip(
        corners_ft(lattice, (lattice.rows, lattice.columns)), (width, depth), start, end, strict=True
    ):
        near = _inside(low + TOUCHING_FT, low + size * lattice.step_ft - TOUCHING_FT, first, last)
        enter, leave = np.maximum(enter, near[0]), np.minimum(leave, near[1])
    return np.asarray(enter < leave)


def _inside(
    low: NDArray[np.float64], high: NDArray[np.float64], first: float, last: float
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Shares of a line, from its first to its last coordinate along an axis, that lie between two bounds."""
    if first == last:
        is_in = (low < first) & (first < high)
        return np.where(is_in, 0.0, 1.0), np.where(is_in, 1.0, 0.0)
    ends = (low - first) / (last - first), (high - first) / (last - first)
    return np.minimum(*ends), np.maximum(*ends)
