"""Roofs that stand in the yard already: which rooms may use one, and where a room lies under it."""

from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.site import Structure

Numbers = NDArray[np.float64]
USED_SHARE: Final = 0.85
"""A roof is used where it covers so much of the smaller of the two; layout rule 27, common practice, no source."""
_ROUNDING_SQFT: Final = 1e-6


def may_use(structure: Structure, room: SizedRoom) -> bool:
    """Whether people may sit in this room under the structure's roof, in one of its choices."""
    return room.name in structure.may_hold and room.rules.paved and any(choice.seats for choice in room.choices)


def lies_under(
    structure: Structure, x_ft: Numbers, y_ft: Numbers, *, width_ft: float, depth_ft: float
) -> NDArray[np.bool_]:
    """Whether a room of this size lies under the roof, at lower left corners: all or nothing."""
    roof = Polygon(structure.outline)
    left, low, right, top = roof.bounds
    near = (x_ft < right) & (x_ft + width_ft > left) & (y_ft < top) & (y_ft + depth_ft > low)
    result = np.zeros(np.shape(x_ft), dtype=np.bool_)
    x, y = np.asarray(x_ft)[near], np.asarray(y_ft)[near]
    grounds = shapely.box(x, y, x + width_ft, y + depth_ft)
    shapely.prepare(roof)
    cut = ~shapely.covers(roof, grounds)
    covered_sqft = np.full(len(grounds), width_ft * depth_ft)
    covered_sqft[cut] = shapely.area(shapely.intersection(roof, grounds[cut]))
    result[near] = covered_sqft >= least_covered_sqft(structure, width_ft * depth_ft) - _ROUNDING_SQFT
    return result


def least_covered_sqft(structure: Structure, room_sqft: float) -> float:
    """Ground that a room of this area shares with the roof at least where it lies under it [sq ft]."""
    return USED_SHARE * min(room_sqft, roof_sqft(structure))


def roof_sqft(structure: Structure) -> float:
    """Area of a roof [sq ft]."""
    return float(Polygon(structure.outline).area)
