"""Placed rooms and rings as shapes of plane geometry [ft]."""

from typing import Final

from shapely import MultiPolygon, Polygon, box, get_parts
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import LocalSide
from optimizer.layout.arrangement import TOLERANCE_FT
from optimizer.layout.placement import Front, Placement
from optimizer.site import Point, Ring

SIDES: Final[tuple[Front, ...]] = ("+x", "+y", "-x", "-y")
"""Sides of the plan, counter-clockwise."""
_QUARTERS: Final[dict[LocalSide, int]] = {"front": 0, "left": 1, "back": 2, "right": 3}


def rectangle(placement: Placement) -> Polygon:
    """Ground that a placed room takes."""
    return box(placement.x_ft, placement.y_ft, placement.right_ft, placement.top_ft)


def outline(ring: Ring) -> Polygon:
    """Area inside a ring."""
    return Polygon(ring)


def areas_only(shape: BaseGeometry) -> BaseGeometry:
    """The areas of a shape, without the lines and points in which areas only touch."""
    if isinstance(shape, Polygon | MultiPolygon):
        return shape
    return MultiPolygon([part for part in get_parts(shape) if isinstance(part, Polygon)])


def side_on_plan(side: LocalSide, front: Front) -> Front:
    """Side of the plan on which a room's own side lies; left and right are seen looking out to the front."""
    return SIDES[(SIDES.index(front) + _QUARTERS[side]) % 4]


def side_ends(placement: Placement, side: Front) -> tuple[Point, Point]:
    """Two ends of a placed room's edge on one side of the plan, counter-clockwise."""
    left, right, bottom, top = placement.x_ft, placement.right_ft, placement.y_ft, placement.top_ft
    ends: dict[Front, tuple[Point, Point]] = {
        "+x": ((right, bottom), (right, top)),
        "+y": ((right, top), (left, top)),
        "-x": ((left, top), (left, bottom)),
        "-y": ((left, bottom), (right, bottom)),
    }
    return ends[side]


def shared_edge_ft(one: Placement, other: Placement) -> float:
    """Length of edge that two placed rooms share; 0 where they do not touch or only overlap."""
    gap_x = max(one.x_ft, other.x_ft) - min(one.right_ft, other.right_ft)
    gap_y = max(one.y_ft, other.y_ft) - min(one.top_ft, other.top_ft)
    touching = [-along for across, along in ((gap_x, gap_y), (gap_y, gap_x)) if abs(across) <= TOLERANCE_FT]
    return max(0.0, *touching) if touching else 0.0


def middle(ends: tuple[Point, Point]) -> Point:
    """Point halfway between two."""
    (x0, y0), (x1, y1) = ends
    return ((x0 + x1) / 2, (y0 + y1) / 2)
