"""Ground on which the centre line of a clear way may run."""

from collections.abc import Iterator, Sequence
from typing import Final, TypeAlias

from shapely import MultiPolygon, Point, Polygon, union_all

from optimizer.catalogue import SizedRoom
from optimizer.circulation.shapes import outline, rectangle
from optimizer.layout import Layout
from optimizer.layout.arrangement import TOLERANCE_FT
from optimizer.site import Site

Ground: TypeAlias = Polygon | MultiPolygon
CLEAR_WIDTH_FT: Final = 3.0
"""Width of a walkway: 36 in, NKBA Kitchen Planning Guideline 7."""
_LEAST_TRUNK_RADIUS_FT: Final = 1.0  # common practice, no source: nobody walks closer to a trunk


def walkable_ground(
    site: Site, rooms: Sequence[SizedRoom], layout: Layout, clear_width_ft: float = CLEAR_WIDTH_FT
) -> Ground:
    """Where the centre of a way of this clear width may run.

    Structures are walked through. The inset is smaller by the touching tolerance, so that a gap of just the clear
    width still joins what lies on either side of it.
    """
    free = outline(site.boundary).difference(union_all([*obstacles_of_site(site), *_standing(rooms, layout)]))
    return free.buffer(TOLERANCE_FT - clear_width_ft / 2, join_style="mitre")


def obstacles_of_site(site: Site) -> Iterator[Polygon]:
    """Buildings, kept-out ground that allows no path, and trunks."""
    yield from (outline(building.outline) for building in site.buildings)
    yield from (outline(area.outline) for area in site.keep_outs if "path" not in area.allow)
    for tree in site.trees:
        yield Point(tree.at).buffer(max(_LEAST_TRUNK_RADIUS_FT, tree.trunk_diameter_ft / 2), quad_segs=2)


def _standing(rooms: Sequence[SizedRoom], layout: Layout) -> Iterator[Polygon]:
    walkable = {room.name for room in rooms if room.rules.walkable}
    yield from (rectangle(placement) for placement in layout.placements if placement.room not in walkable)
