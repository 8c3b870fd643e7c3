"""What a planting plan amounts to."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, get_args

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import PriceBook
from optimizer.fields import open_yard
from optimizer.layout import Placed
from optimizer.planting.bed import BedReason
from optimizer.planting.plan import Planting
from optimizer.planting.rectangle import largest_rectangle
from optimizer.site import Site

LARGEST_SHARE: Final = 0.5
"""Share of all lawn that its largest rectangle has at least; layout rule 12, common practice, no source."""
_SNAP_FT: Final = 1e-4  # closes the hair between lawns that meet


@dataclass(frozen=True, slots=True)
class PlantingMeasures:
    """Beds by reason [sq ft]; lawn with its largest rectangle, wished lawns included; and ground left over: without a
    use or too narrow or small for lawn [sq ft], and each as a share of the open yard. Derived beds are no lines of the
    cost: `paid_sqft` of them are what the lump for planting is worth at the price of a bed. `bank_sqft` is wide ground
    that nobody uses or mows, and that is no leftover: it is planted or left [sq ft].
    """

    beds_sqft: tuple[tuple[str, float], ...] = ()
    lawn_sqft: float = 0.0
    lawn_rectangle_ft: tuple[float, float] = (0.0, 0.0)
    leftover_sqft: float = 0.0
    unused_share: float = 0.0
    narrow_share: float = 0.0
    paid_sqft: float = 0.0
    bank_sqft: float = 0.0

    @property
    def lawn_rectangle_share(self) -> float:
        """Share of all lawn that its largest rectangle has; 0 without any."""
        long, short = self.lawn_rectangle_ft
        return long * short / self.lawn_sqft if self.lawn_sqft else 0.0

    @property
    def scattered_sqft(self) -> float:
        """What the largest rectangle of lawn lacks of half of all lawn [sq ft]."""
        return max(0.0, LARGEST_SHARE - self.lawn_rectangle_share) * self.lawn_sqft


def planting_measures(site: Site, placed: Placed, book: PriceBook, planting: Planting) -> PlantingMeasures:
    """Measures of a layout's planting."""
    yard_sqft = open_yard(site).area
    wished = [lawn.shape for lawn in placed.of_kind("lawn")]
    areas = {reason: sum(b.outline.area for b in planting.beds if b.reason == reason) for reason in get_args(BedReason)}
    lawns = shapely.get_parts(shapely.union_all([*planting.lawns, *wished], grid_size=_SNAP_FT))
    return PlantingMeasures(
        beds_sqft=tuple((reason, round(area, 2)) for reason, area in areas.items() if area > 0),
        lawn_sqft=round(sum(lawn.area for lawn in (*planting.lawns, *wished)), 2),
        lawn_rectangle_ft=_rounded(_largest_of(lawns)),
        leftover_sqft=round(float(planting.unused.area) + areas["narrow ground"], 2),
        unused_share=round(float(planting.unused.area / yard_sqft), 6),
        narrow_share=round(areas["narrow ground"] / yard_sqft, 6),
        bank_sqft=round(float(planting.bank.area), 2),
        paid_sqft=round(float(book.of("planting of leftovers").price / book.of("planting bed").price), 2),
    )


def _largest_of(lawns: Iterable[BaseGeometry]) -> tuple[float, float]:
    """Largest rectangle in any of the lawns; what is smaller than a rectangle found is not looked through."""
    best = (0.0, 0.0)
    for lawn in sorted((lawn for lawn in lawns if isinstance(lawn, Polygon)), key=lambda lawn: -lawn.area):
        if lawn.area < best[0] * best[1]:
            break
        best = max(best, largest_rectangle(lawn), key=lambda size: size[0] * size[1])
    return best


def _rounded(size_ft: tuple[float, float]) -> tuple[float, float]:
    return (round(size_ft[0], 2), round(size_ft[1], 2))
