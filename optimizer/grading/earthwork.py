"""Volumes of earth by the grid method, and what digging and compacting make of them."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.brief import RoomShape
from optimizer.catalogue.steps import step_rules
from optimizer.layout import Placement

CUFT_PER_CUYD: Final = 27.0
_CELL_FT: Final = 1.0  # a room's ground is sampled about this often

Numbers = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Earth:
    """Earth under one room: cut as it lies in the bank and fill as it lies compacted [cu yd]."""

    room: str
    cut_bcy: float
    fill_ccy: float


def corners_of(placement: Placement) -> Numbers:
    """Corners of a grid of cells of about 1 ft over a room, as (rows, columns, 2) [ft]."""
    columns, rows = (max(1, round(side / _CELL_FT)) + 1 for side in (placement.width_ft, placement.depth_ft))
    xs = np.linspace(placement.x_ft, placement.right_ft, columns)
    ys = np.linspace(placement.y_ft, placement.top_ft, rows)
    return np.stack(np.meshgrid(xs, ys), axis=2)


def mean_of_cells(values: Numbers, shape: RoomShape = "rectangle") -> float:
    """Mean over a grid's cells of the mean at each cell's four corners, for values at the corners (rows, columns);
    for a circle over the cells whose middles lie in it.
    """
    cells = (values[:-1, :-1] + values[1:, :-1] + values[:-1, 1:] + values[1:, 1:]) / 4
    return float((cells[_in_circle(*cells.shape)] if shape == "circle" else cells).mean())


def _in_circle(rows: int, columns: int) -> NDArray[np.bool_]:
    """Cells of a square grid whose middles lie in the circle that touches its sides."""
    up, right = ((np.arange(count) + 0.5) / count - 0.5 for count in (rows, columns))
    return np.asarray(right[None, :] ** 2 + up[:, None] ** 2 <= 0.25)


def grid_volume_cuft(depths_ft: Numbers, area_sqft: float, shape: RoomShape = "rectangle") -> float:
    """Volume [cu ft] over an area, from depths at a grid's corners (rows, columns) [ft].

    Each cell's four depths are averaged; source: Dagostino and Peterson, Estimating in Building Construction, ex. 9-5.
    """
    return mean_of_cells(depths_ft, shape) * area_sqft


def earth_under(placement: Placement, ground_z_ft: Numbers, level_ft: float) -> Earth:
    """Cut and fill that bring the ground, known at the corners of a room's grid, to the room's level."""
    depths = ground_z_ft - level_ft
    cut = grid_volume_cuft(np.maximum(depths, 0.0), placement.area_sqft, placement.shape)
    fill = grid_volume_cuft(np.maximum(-depths, 0.0), placement.area_sqft, placement.shape)
    return Earth(placement.room, cut / CUFT_PER_CUYD, fill / CUFT_PER_CUYD)


def loose_cuyd(bank_cuyd: float, swell: float | None = None) -> float:
    """Loose volume of earth that was dug [cu yd], by its swell (the usual one unless given)."""
    return bank_cuyd * (step_rules().swell if swell is None else swell)


def bank_cuyd(compacted_cuyd: float) -> float:
    """Earth in the bank that makes so much compacted fill [cu yd]."""
    return compacted_cuyd / step_rules().shrink
