"""Small geometry that several parts of the drawing share: rings, boxes, and shapely to marks and back."""

from collections.abc import Iterator
from math import cos, pi, sin, sqrt

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.marks import Area, Box
from optimizer.layout import Placement, footprint, radius_ft
from optimizer.site import Point, Ring


def ring_of_box(bounds: Box) -> Ring:
    """Corners of a box, counter-clockwise."""
    x1, y1, x2, y2 = bounds
    return ((x1, y1), (x2, y1), (x2, y2), (x1, y2))


def box_of(placement: Placement) -> Box:
    """Bounds of a placed room [ft]."""
    return (placement.x_ft, placement.y_ft, placement.right_ft, placement.top_ft)


def inner_box_of(placement: Placement) -> Box:
    """Bounds within which all lies in a placed room [ft]: of a circle the square inside it."""
    if not placement.is_circle:
        return box_of(placement)
    (x, y), half = placement.centre, radius_ft(placement) * sqrt(0.5)
    return (x - half, y - half, x + half, y + half)


def ring_of(placement: Placement) -> Ring:
    """Corners of a placed room, counter-clockwise; of a circle many."""
    if not placement.is_circle:
        return ring_of_box(box_of(placement))
    return tuple((x, y) for x, y in footprint(placement).exterior.reverse().coords[:-1])


def polygon_of(bounds: Box) -> Polygon:
    """Make a box a polygon."""
    return shapely.box(*bounds)


def polygons_in(geometry: BaseGeometry | None) -> Iterator[Polygon]:
    """Every polygon of a geometry, however it is nested; lines and points are passed over."""
    if geometry is None or geometry.is_empty:
        return
    if isinstance(geometry, Polygon):
        yield geometry
    for part in getattr(geometry, "geoms", ()):
        yield from polygons_in(part)


def areas_of(role: str, geometry: BaseGeometry | None) -> tuple[Area, ...]:
    """Every polygon of a geometry as an area with its holes."""
    return tuple(
        Area(role, tuple(tuple((x, y) for x, y in ring.coords[:-1]) for ring in (part.exterior, *part.interiors)))
        for part in polygons_in(geometry)
    )


def loose_ring(centre: Point, *, radius_ft: float, lobes: int = 11) -> Ring:
    """Draw a crown as by hand: a circle of shallow lobes that stays within the radius [ft]."""
    steps = lobes * 8
    turns = (2 * pi * step / steps for step in range(steps))
    return tuple(
        (centre[0] + reach * cos(turn), centre[1] + reach * sin(turn))
        for turn in turns
        for reach in (radius_ft * (0.92 + 0.08 * abs(sin(turn * lobes / 2))),)
    )


def along_wall(at: Point, outward: Point, width_ft: float) -> tuple[Point, Point]:
    """Find the two jambs of an opening in a wall whose outward side is given."""
    (x, y), (ox, oy), half = at, outward, width_ft / 2
    return ((x + oy * half, y - ox * half), (x - oy * half, y + ox * half))


def moved(point: Point, direction: Point, distance_ft: float) -> Point:
    """Move a point along a direction."""
    return (point[0] + direction[0] * distance_ft, point[1] + direction[1] * distance_ft)
