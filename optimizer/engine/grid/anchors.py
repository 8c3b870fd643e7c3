"""Where a room is measured from at every position it may take."""

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.variants import Variant

Ordinates = tuple[NDArray[np.float64], NDArray[np.float64]]


def anchors_ft(lattice: Lattice, variant: Variant) -> Ordinates:
    """Anchor of the variant at each lower left corner: x and y [ft], each of shape (rows, columns)."""
    return _points(lattice, variant.anchor)


def centres_ft(lattice: Lattice, variant: Variant) -> Ordinates:
    """Centre of the variant at each lower left corner: x and y [ft], each of shape (rows, columns)."""
    return _points(lattice, (variant.width, variant.depth))


def _points(lattice: Lattice, half_steps: tuple[int, int]) -> Ordinates:
    x = lattice.x0_ft + lattice.step_ft * (np.arange(lattice.columns) + half_steps[0] / 2)
    y = lattice.y0_ft + lattice.step_ft * (np.arange(lattice.rows) + half_steps[1] / 2)
    grid_x, grid_y = np.meshgrid(x, y)
    return grid_x, grid_y


def corners_ft(lattice: Lattice, shape: tuple[int, ...]) -> Ordinates:
    """Lower left corners themselves: x and y [ft], each of the shape that is asked for."""
    rows, columns = shape
    grid_x, grid_y = np.meshgrid(
        lattice.x0_ft + lattice.step_ft * np.arange(columns), lattice.y0_ft + lattice.step_ft * np.arange(rows)
    )
    return grid_x, grid_y
