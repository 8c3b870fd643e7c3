"""Which rectangles on the grid a straight wall runs through."""

from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.anchors import corners_ft
from optimizer.engine.grid.lattice import Cells, Lattice
from optimizer.site import Point

Numbers = NDArray[np.float64]
Ordinates = Numbers | float
TOUCHING_FT: Final = 0.01
"""What lies so near to an edge runs along it: less than what the check lets pass, more than conversion adds."""


@lru_cache(maxsize=256)
def crossed(lattice: Lattice, start: Point, end: Point, *, width: int, depth: int) -> Cells:
    """Lower left corners from which a rectangle of so many steps has a part of the line inside it, not on its edge."""
    enter, leave = np.zeros((lattice.rows, lattice.columns)), np.ones((lattice.rows, lattice.columns))
    for low, size, first, last in zip(
        corners_ft(lattice, (lattice.rows, lattice.columns)), (width, depth), start, end, strict=True
    ):
        near = shares_inside(low + TOUCHING_FT, low + size * lattice.step_ft - TOUCHING_FT, first, last)
        enter, leave = np.maximum(enter, near[0]), np.minimum(leave, near[1])
    return np.asarray(enter < leave)


def shares_inside(low: Ordinates, high: Ordinates, first: Ordinates, last: Ordinates) -> tuple[Numbers, Numbers]:
    """Shares of lines, from their first to their last coordinate along an axis, that lie between two bounds."""
    along, is_in = np.subtract(last, first), np.less(low, first) & np.less(first, high)
    is_level = along == 0
    run = np.where(is_level, 1.0, along)
    ends = (low - first) / run, (high - first) / run
    enter = np.where(is_level, np.where(is_in, 0.0, 1.0), np.minimum(*ends))
    return enter, np.where(is_level, np.where(is_in, 1.0, 0.0), np.maximum(*ends))
