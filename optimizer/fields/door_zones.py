"""The landing and steps in front of a door, which stay free of rooms."""

from itertools import pairwise
from math import hypot
from typing import Final

from shapely import LineString, Polygon

from optimizer.catalogue.steps import risers_for
from optimizer.fields.ground import ground_z_ft
from optimizer.site import Building, Door, Point, Site

Side = tuple[Point, Point]
"""Ends of a side of a door zone, clockwise."""

LANDING_FT: Final = 4.0
"""Depth of the landing in front of a door; common practice, no source."""
TREAD_FT: Final = 14.0 / 12.0
"""Depth of a tread outdoors; common practice, no source."""
BUILT_UP_FT: Final = 1.0
"""A landing or its lowest tread is built up to what stands no farther from it than this; common practice, no source."""
_SIDE_FT: Final = 1.0  # beyond each jamb; common practice, no source


def risers(site: Site, building: Building, door: Door) -> int:
    """Count of steps from the ground up to a door's floor: none up to a flush sill, else at least two."""
    if building.floor_z_ft is None:
        return 0
    return risers_for(12.0 * (building.floor_z_ft - float(ground_z_ft(site, [door.at])[0])))


def stepped_out_ft(count: int) -> float:
    """How far a landing with so many risers reaches out from the wall [ft]."""
    return LANDING_FT + max(0, count - 1) * TREAD_FT


def door_zone(site: Site, building: Building, door: Door) -> Polygon:
    """Ground in front of a door that its landing and steps take: the door and 1 ft on each side, straight out.

    Without steps it is the landing alone.
    """
    (x, y), (out_x, out_y) = door.at, door.outward
    half = door.width_ft / 2 + _SIDE_FT
    depth = stepped_out_ft(risers(site, building, door))
    corners = ((-half, 0.0), (half, 0.0), (half, depth), (-half, depth))
    return Polygon([(x - along * out_y + away * out_x, y + along * out_x + away * out_y) for along, away in corners])


def free_sides(zone: Polygon) -> tuple[Side, ...]:
    """The three sides of a door zone that do not lie at the wall; open ground is left of each."""
    corners = [(x, y) for x, y in zone.exterior.coords]
    return tuple(pairwise(corners[1:]))


def faced_part(side: Side) -> Side:
    """A side without a tread at either end: what overlaps it by no more stands at its corner and does not face it."""
    (x, y), (end_x, end_y) = side
    part = TREAD_FT / hypot(end_x - x, end_y - y)
    by_x, by_y = part * (end_x - x), part * (end_y - y)
    return (x + by_x, y + by_y), (end_x - by_x, end_y - by_y)


def ground_beside(side: Side, depth_ft: float) -> Polygon:
    """Ground left of a side, as far along as the side itself and as deep as asked."""
    return Polygon([*side, *LineString(side).offset_curve(depth_ft).coords[::-1]])
