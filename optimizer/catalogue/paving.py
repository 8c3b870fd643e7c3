"""Materials of a paved area of brick on sand and crushed stone, before they have prices."""

from dataclasses import dataclass
from typing import Final

_UNITS_PER_SQFT: Final = 4.5  # 4 x 8 in pavers: Brick Industry Association, consumer guide
_BREAKAGE: Final = 0.05  # same guide
_UNITS_CUT_PER_FT: Final = 1.5  # same guide
_SAND_CUYD_PER_SQFT: Final = 0.00309  # 1 in of sand, same guide
_STONE_CUYD_PER_SQFT: Final = 0.01235  # 4 in of stone, same guide
_STONE_IN: Final = 4.0
_LEAST_EXTENSION_IN: Final = 6.0  # ICPI, construction tolerances and recommendations


@dataclass(frozen=True, slots=True)
class PavingMaterials:
    """Units, bedding sand [cu yd], and base stone [cu yd] with the area that it covers [sq ft]."""

    units: float
    sand_cuyd: float
    base_sqft: float
    stone_cuyd: float


def paving_materials(*, width_ft: float, depth_ft: float, cut_edge_ft: float, base_in: float = 4.0) -> PavingMaterials:
    """Materials of a rectangle with all edges free.

    `cut_edge_ft` is the length of edge along which units are cut; the base is 4 in thick under a patio, 6 under a
    drive (ICPI), and reaches beyond the edge.
    """
    area_sqft, beyond_ft = width_ft * depth_ft, 2 * base_extension_ft(base_in)
    base_sqft = (width_ft + beyond_ft) * (depth_ft + beyond_ft)
    return PavingMaterials(
        units=area_sqft * _UNITS_PER_SQFT * (1 + _BREAKAGE) + cut_edge_ft * _UNITS_CUT_PER_FT,
        sand_cuyd=area_sqft * _SAND_CUYD_PER_SQFT,
        base_sqft=base_sqft,
        stone_cuyd=stone_cuyd(base_sqft, base_in=base_in),
    )


def stone_cuyd(area_sqft: float, *, base_in: float) -> float:
    """Compacted stone [cu yd] under an area."""
    return area_sqft * _STONE_CUYD_PER_SQFT * base_in / _STONE_IN


def base_extension_ft(base_in: float) -> float:
    """How far the base reaches beyond a free edge: the greater of 6 in and its own thickness [ft]. Source: ICPI."""
    return max(_LEAST_EXTENSION_IN, base_in) / 12
