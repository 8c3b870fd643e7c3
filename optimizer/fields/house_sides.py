"""Which side of the house a place lies on, seen from the garden door."""

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.site import Door, Site

Numbers = NDArray[np.float64]
_EVEN_FT = 0.01  # what lies so near to a line lies on it, whatever rounding says


def beside_house(site: Site, door: Door, x_ft: Numbers, y_ft: Numbers) -> NDArray[np.bool_]:
    """Whether points lie beside the house of a door: past one of its ends, and neither in front of it nor behind it.

    The front is the side that the door looks out to, as far out as the farthest wall of the house.
    """
    house = next(building for building in site.buildings if door in building.doors)
    walls = shapely.get_coordinates(shapely.Polygon(house.outline))
    wall_out, wall_along = _seen(door, walls[:, 0], walls[:, 1])
    out, along = _seen(door, x_ft, y_ft)
    between = (out >= wall_out.min() - _EVEN_FT) & (out <= wall_out.max() + _EVEN_FT)
    past = (along < wall_along.min() - _EVEN_FT) | (along > wall_along.max() + _EVEN_FT)
    return np.asarray(between & past)


def _seen(door: Door, x_ft: Numbers, y_ft: Numbers) -> tuple[Numbers, Numbers]:
    """How far points lie out from a door, and along its wall [ft]."""
    out_x, out_y = door.outward
    away_x, away_y = x_ft - door.at[0], y_ft - door.at[1]
    return away_x * out_x + away_y * out_y, away_x * out_y - away_y * out_x
