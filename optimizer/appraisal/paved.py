"""Ground that the layout paves, as a share of the open yard."""

from collections.abc import Sequence

from shapely.geometry.base import BaseGeometry

from optimizer.appraisal.grounds import ground_of
from optimizer.catalogue import SizedRoom
from optimizer.fields import open_yard
from optimizer.layout import Layout
from optimizer.site import Site


def paved_share(site: Site, rooms: Sequence[SizedRoom], layout: Layout, paths: BaseGeometry) -> float:
    """Share of the open yard under paved rooms and paths."""
    paved = {room.name for room in rooms if room.rules.paved}
    ground = ground_of(placement for placement in layout.placements if placement.room in paved)
    yard = open_yard(site)
    return float(ground.union(paths).intersection(yard).area / yard.area)
