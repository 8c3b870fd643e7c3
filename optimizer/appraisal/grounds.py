"""Areas of the yard: what is open, and what rooms take of it."""

from collections.abc import Iterable

from shapely import union_all
from shapely.geometry.base import BaseGeometry

from optimizer.circulation import outline, rectangle
from optimizer.layout import Placement
from optimizer.site import Site


def open_yard(site: Site) -> BaseGeometry:
    """Boundary less buildings."""
    return outline(site.boundary).difference(union_all([outline(building.outline) for building in site.buildings]))


def ground_of(placements: Iterable[Placement]) -> BaseGeometry:
    """Ground that placed rooms take together."""
    return union_all([rectangle(placement) for placement in placements])
