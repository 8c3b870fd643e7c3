"""Ground that the layout leaves without a use, and ground that it paves, as shares of the open yard."""

from collections.abc import Sequence
from typing import Final

from shapely.geometry.base import BaseGeometry

from optimizer.appraisal.grounds import ground_of
from optimizer.catalogue import SizedRoom
from optimizer.fields import open_yard
from optimizer.layout import Layout
from optimizer.site import Site

_LEAST_WIDTH_FT: Final = 4.0  # narrower ground is neither mown nor planted well; common practice, no source


def leftover_share(site: Site, layout: Layout, paths: BaseGeometry) -> float:
    """Share of the open yard without a use: what rooms and paths leave over in pieces narrower than 4 ft.

    Wider ground is lawn or planting. Narrow is what vanishes when the free ground is shrunk by half that width and
    grown again.
    """
    yard = open_yard(site)
    free = yard.difference(ground_of(layout.placements)).difference(paths)
    half = _LEAST_WIDTH_FT / 2
    wide = free.buffer(-half, join_style="mitre").buffer(half, join_style="mitre")
    return float(free.difference(wide).area / yard.area)


def paved_share(site: Site, rooms: Sequence[SizedRoom], layout: Layout, paths: BaseGeometry) -> float:
    """Share of the open yard under paved rooms and paths."""
    paved = {room.name for room in rooms if room.rules.paved}
    ground = ground_of(placement for placement in layout.placements if placement.room in paved)
    yard = open_yard(site)
    return float(ground.union(paths).intersection(yard).area / yard.area)
