"""Ground that the layout paves, as a share of the open yard."""

from typing import Final

from shapely import union_all
from shapely.geometry.base import BaseGeometry

from optimizer.appraisal.grounds import ground_of
from optimizer.fields import open_yard
from optimizer.fields.existing_paving import standing_paving
from optimizer.layout import Placed
from optimizer.site import Site

PAVED_SHARE: Final = 0.45
SMALL_YARD_SHARE: Final = 0.65
SMALL_YARD_SQFT: Final = 2000.0


def overpaved_sqft(site: Site, share: float) -> float:
    """Paved ground beyond 45 % of the open yard, 65 % of one under 2,000 sq ft [sq ft]; common practice, no source."""
    yard_sqft = float(open_yard(site).area)
    most = SMALL_YARD_SHARE if yard_sqft < SMALL_YARD_SQFT else PAVED_SHARE
    return round(max(0.0, share - most) * yard_sqft, 2)


def paved_share(site: Site, placed: Placed, paths: BaseGeometry) -> float:
    """Share of the open yard under paved rooms, paths and paving that stays."""
    ground = ground_of(room.placement for room in placed.paved)
    yard = open_yard(site)
    there = standing_paving(site, placed.shapes)
    return float(union_all([ground, paths, there]).intersection(yard).area / yard.area)
