"""Where the pad of a pool's equipment may stand on a site: with its back to a house wall or to the boundary."""

from collections.abc import Iterator
from functools import lru_cache
from math import dist, floor
from typing import Final

import shapely
from shapely import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import distance_ft, keep_out_ft, line_clear_ft, pad_size_ft, root_rings
from optimizer.derived.boxes import box_along, jambs
from optimizer.fields import SITES, site_shapes
from optimizer.layout import TOLERANCE_FT
from optimizer.site import Ring, Site

_FARTHEST_FT: Final = 8.0
"""Equipment that must keep farther from an edge of the yard does not stand along it; common practice, no source."""
_STEP_FT: Final = 1.0
_ALONG_FT: Final = 0.02  # an edge that runs so nearly along an axis does

Side = tuple[tuple[float, float], tuple[float, float]]


@lru_cache(maxsize=SITES)
def pad_places(site: Site) -> tuple[Polygon, ...]:
    """Places on a site without rooms, a foot apart from both ends of each wall and each edge of the yard [ft].

    They keep off doors, windows that open, keep-outs, root zones, lines in the ground and the setbacks of equipment.
    """
    free = _free(site)
    shapely.prepare(free)
    return tuple(place for place in _candidates(site) if free.covers(place))


def _candidates(site: Site) -> Iterator[Polygon]:
    for building in site.buildings:
        for side in _sides(building.outline, yard_inside=False):
            yield from _along(side, 0.0)
    for side, setbacks in zip(_sides(site.boundary, yard_inside=True), site.setbacks, strict=True):
        if setbacks.equipment <= _FARTHEST_FT:
            yield from _along(side, setbacks.equipment)


def _sides(outline: Ring, *, yard_inside: bool) -> Iterator[Side]:
    """Sides of an outline in its own order, each so turned that the yard is left of it."""
    is_kept = Polygon(outline).exterior.is_ccw == yard_inside
    for start, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        yield (start, end) if is_kept else (end, start)


def _along(side: Side, off_ft: float) -> Iterator[Polygon]:
    """Places along a side that runs along an axis, so far off it."""
    (x, y), (end_x, end_y) = side
    length_ft, (long, deep) = dist(*side), pad_size_ft()
    if min(abs(end_x - x), abs(end_y - y)) > _ALONG_FT or length_ft < long:
        return
    to_x, to_y = (end_x - x) / length_ft, (end_y - y) / length_ft
    steps = [_STEP_FT * number for number in range(floor((length_ft - long) / _STEP_FT) + 1)]
    for at in dict.fromkeys((*steps, *(round(length_ft - long - step, 6) for step in steps))):
        corners = ((at, off_ft), (at + long, off_ft), (at + long, off_ft + deep), (at, off_ft + deep))
        yield Polygon([(x + a * to_x - d * to_y, y + a * to_y + d * to_x) for a, d in corners])


def _free(site: Site) -> BaseGeometry:
    """Ground on which a pad may stand while no room does, wider by the touching tolerance."""
    shapes = site_shapes(site)
    near = zip(shapes.edges, site.setbacks, strict=True)
    taken = [
        *shapes.buildings,
        *shapes.structures,
        *shapes.keep_outs,
        *(zone for _, zone in shapes.door_zones),
        *(edge.buffer(setback.equipment) for edge, setback in near if setback.equipment),
        *_before_openings(site),
        *_underground(site),
    ]
    return shapes.boundary.difference(shapely.union_all(taken)).buffer(TOLERANCE_FT, join_style="mitre")


def _before_openings(site: Site) -> Iterator[BaseGeometry]:
    ahead_ft, beside_ft = distance_ft(site, "ahead_of_door"), distance_ft(site, "beside_window")
    for door in site.doors:
        yield box_along(door.at, door.outward, door.width_ft, 0.0, ahead_ft)
    for pane in site.windows:
        if pane.opens:
            yield LineString(jambs(pane.at, pane.outward, pane.width_ft)).buffer(beside_ft)


def _underground(site: Site) -> Iterator[BaseGeometry]:
    """Ground near roots, lines and septic ground."""
    trunks = root_rings(site).inner_trunks
    yield from (Point(tree.at).buffer(trunks * tree.trunk_diameter_ft) for tree in site.trees)
    yield from (LineString(line.line).buffer(line_clear_ft(site, line)) for line in site.utility_lines)
    for area, ground in zip(site.keep_outs, site_shapes(site).keep_outs, strict=True):
        yield ground.buffer(keep_out_ft(site, area.kind, ("equipment",)))
