"""Ground that rooms take of the yard."""

from collections.abc import Iterable

from shapely import union_all
from shapely.geometry.base import BaseGeometry

from optimizer.layout import Placement, footprint


def ground_of(placements: Iterable[Placement]) -> BaseGeometry:
    """Ground that placed rooms take together."""
    return union_all([footprint(placement) for placement in placements])
