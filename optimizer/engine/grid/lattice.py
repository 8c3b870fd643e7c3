"""The grid that the solver counts on, and windows of cells on it."""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray

Cells = NDArray[np.bool_]
"""One truth for each cell, or for each position of a room's lower left corner; shape (rows, columns)."""

SLACK = 1e-6


@dataclass(frozen=True, slots=True)
class Lattice:
    """Square cells of `step_ft`, counted from (`x0_ft`, `y0_ft`)."""

    step_ft: float
    x0_ft: float
    y0_ft: float
    columns: int
    rows: int

    def need(self, length_ft: float) -> int:
        """Whole steps that a needed length takes: rounded up."""
        return max(0, math.ceil(length_ft / self.step_ft - SLACK))

    def x_ft(self, column: float) -> float:
        """Plan x of a grid line [ft]."""
        return self.x0_ft + column * self.step_ft

    def y_ft(self, row: float) -> float:
        """Plan y of a grid line [ft]."""
        return self.y0_ft + row * self.step_ft

    def line(self, ordinate_ft: float, *, origin_ft: float, tolerance_ft: float = 0.02) -> int | None:
        """Index of the grid line at an ordinate, or None where none lies within the tolerance."""
        index = round((ordinate_ft - origin_ft) / self.step_ft)
        return index if abs(origin_ft + index * self.step_ft - ordinate_ft) <= tolerance_ft else None

    def boxes(self) -> NDArray[np.object_]:
        """Every cell as a polygon, shape (rows, columns)."""
        return _boxes(self)


@lru_cache(maxsize=4)
def _boxes(lattice: Lattice) -> NDArray[np.object_]:
    x = lattice.x0_ft + lattice.step_ft * np.arange(lattice.columns)
    y = lattice.y0_ft + lattice.step_ft * np.arange(lattice.rows)
    left, low = np.meshgrid(x, y)
    return np.asarray(shapely.box(left, low, left + lattice.step_ft, low + lattice.step_ft))


def any_in_window(cells: Cells, *, width: int, depth: int) -> Cells:
    """Whether any cell of the window at each lower left corner is true; True where the window leaves the grid."""
    result = np.ones_like(cells)
    rows, columns = cells.shape
    if width > columns or depth > rows:
        return result
    result[: rows - depth + 1, : columns - width + 1] = window_sums(cells, width=width, depth=depth) > 0
    return result


def window_sums(cells: NDArray[np.bool_] | NDArray[np.float64], *, width: int, depth: int) -> NDArray[np.float64]:
    """Sum over each window of that size, by a summed-area table; shape (rows - depth + 1, columns - width + 1)."""
    table = np.zeros((cells.shape[0] + 1, cells.shape[1] + 1))
    table[1:, 1:] = cells.cumsum(axis=0, dtype=float).cumsum(axis=1)
    return np.asarray(table[depth:, width:] - table[:-depth, width:] - table[depth:, :-width] + table[:-depth, :-width])


def shifted(cells: Cells, *, right: int, up: int, fill: bool) -> Cells:
    """Cells read `right` columns and `up` rows further on: result[y, x] = cells[y + up, x + right], else `fill`."""
    rows, columns = cells.shape
    result = np.full_like(cells, fill)
    y = slice(max(0, -up), min(rows, rows - up))
    x = slice(max(0, -right), min(columns, columns - right))
    if y.start < y.stop and x.start < x.stop:
        result[y, x] = cells[y.start + up : y.stop + up, x.start + right : x.stop + right]
    return result
