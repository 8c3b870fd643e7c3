"""The landing and steps in front of a door, which stay free of rooms."""

from math import ceil
from typing import Final

from shapely import Polygon

from optimizer.fields.ground import ground_z_ft
from optimizer.site import Building, Door, Site

LANDING_FT: Final = 4.0
"""Depth of the landing in front of a door; common practice, no source."""
TREAD_FT: Final = 14.0 / 12.0
"""Depth of a tread outdoors; common practice, no source."""
_HIGHEST_RISER_FT: Final = 7.0 / 12.0  # common practice, no source
_SIDE_FT: Final = 1.0  # beyond each jamb; common practice, no source
_EVEN: Final = 1e-9


def risers(site: Site, building: Building, door: Door) -> int:
    """Count of steps from the ground up to a door's floor, at least the one of its sill."""
    if building.floor_z_ft is None:
        return 1
    rise_ft = building.floor_z_ft - float(ground_z_ft(site, [door.at])[0])
    return max(1, ceil(rise_ft / _HIGHEST_RISER_FT - _EVEN))


def door_zone(site: Site, building: Building, door: Door) -> Polygon:
    """Ground in front of a door that its landing and steps take: the door and 1 ft on each side, straight out."""
    (x, y), (out_x, out_y) = door.at, door.outward
    half = door.width_ft / 2 + _SIDE_FT
    depth = LANDING_FT + (risers(site, building, door) - 1) * TREAD_FT
    corners = ((-half, 0.0), (half, 0.0), (half, depth), (-half, depth))
    return Polygon([(x - along * out_y + away * out_x, y + along * out_x + away * out_y) for along, away in corners])
