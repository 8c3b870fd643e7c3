"""Ground before service points: meters, taps and outlets have to be reached."""

from collections.abc import Iterator
from itertools import chain, pairwise
from math import dist
from typing import Final

import shapely
from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

from optimizer.planting.strips import SCREEN_FT
from optimizer.site import Point, Ring, Site

SERVICE_FT: Final = 3.0
"""Width of the ground before a service point, and its reach round one that stands free. Electrical working space is
36 in deep and 30 in wide by NEC 110.26 (from memory); the same for gas and water is common practice, no source.
"""
OPEN_FT: Final = SCREEN_FT
"""How deep that ground is kept open: past the deepest bed, so that one gets in; common practice, no source."""
_AT_WALL_FT: Final = 1.0  # a box or tap hangs so near its wall


def at_services(site: Site) -> BaseGeometry:
    """Ground before the gas, electric, water and drain points of a site, square to the wall or boundary they are at."""
    grounds = (ground for utility in site.utilities for ground in _grounds(site, utility.at))
    return shapely.union_all(list(grounds))


def _grounds(site: Site, at: Point) -> Iterator[Polygon]:
    """One piece for every wall that the point is at; all round it where it stands free in the yard."""
    walls = chain.from_iterable(_edges(building.outline, clockwise=True) for building in site.buildings)
    sides = [*walls, *_edges(site.boundary, clockwise=False)]
    at_wall = [side for side in sides if LineString(side).distance(shapely.Point(at)) <= _AT_WALL_FT]
    yield from (_before(at, *side) for side in at_wall)
    if not at_wall:
        x, y = at
        yield box(x - SERVICE_FT, y - SERVICE_FT, x + SERVICE_FT, y + SERVICE_FT)


def _edges(outline: Ring, *, clockwise: bool) -> Iterator[tuple[Point, Point]]:
    """Edges of an outline, so turned that the yard is left of them."""
    return pairwise(orient(Polygon(outline), -1.0 if clockwise else 1.0).exterior.coords)


def _before(at: Point, start: Point, end: Point) -> Polygon:
    """Strip to the left of a line, square to it, the point in its middle; it begins behind the point, at the wall."""
    length_ft = dist(start, end)
    along_x, along_y = (end[0] - start[0]) / length_ft, (end[1] - start[1]) / length_ft
    half, back = SERVICE_FT / 2, _AT_WALL_FT
    corners = ((-half, -back), (half, -back), (half, OPEN_FT), (-half, OPEN_FT))
    return Polygon([(at[0] + a * along_x - d * along_y, at[1] + a * along_y + d * along_x) for a, d in corners])
