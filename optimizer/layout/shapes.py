"""Placed rooms and rings as shapes of plane geometry [ft]."""

from math import pi, sin, sqrt
from typing import Final

import numpy as np
from shapely import MultiPolygon, Polygon, box, get_parts
from shapely import Point as Spot
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import LocalSide
from optimizer.layout.arrangement import TOLERANCE_FT
from optimizer.layout.placement import FRONT_VECTORS, Front, Placement
from optimizer.site import Point, Ring

SIDES: Final[tuple[Front, ...]] = ("+x", "+y", "-x", "-y")
"""Sides of the plan, counter-clockwise."""
QUARTER_STEPS: Final = 32
"""Edges in a quarter of a circle as it is drawn."""
DRAWN_SHARE: Final = sin(pi / 2 / QUARTER_STEPS) / (pi / 2 / QUARTER_STEPS)
"""Area of a circle as it is drawn, for that of the circle: a twenty-fifth of a percent less than 1."""
WIDEST_WAY_FT: Final = 5.0
"""Layout rule 26, common practice, no source: ways are 5, 4 and 3 ft wide."""
_QUARTERS: Final[dict[LocalSide, int]] = {"front": 0, "left": 1, "back": 2, "right": 3}


def footprint(placement: Placement) -> Polygon:
    """Ground that a placed room takes; of a circle a ring of short edges, with a corner at each of its four sides."""
    if not placement.is_circle:
        return rectangle(placement)
    return Spot(placement.centre).buffer(radius_ft(placement), quad_segs=QUARTER_STEPS)


def walked_round(placement: Placement) -> Polygon:
    """Ground that people are led round: a room's own; of a circle sixteen sides that touch it, since every corner of
    what stands is a place to turn at.
    """
    return around(placement.centre, radius_ft(placement), 16) if placement.is_circle else rectangle(placement)


def around(centre: Point, radius_ft: float, count: int) -> Polygon:
    """Regular polygon of so many sides, a multiple of four, that touch a circle; one on each side of the plan."""
    turns = (np.arange(count) + 0.5) * (2 * np.pi / count)
    reach = radius_ft / np.cos(np.pi / count)
    return Polygon(np.array(centre) + reach * np.stack([np.cos(turns), np.sin(turns)], axis=1))


def radius_ft(placement: Placement) -> float:
    """Half of what a circle is across [ft]."""
    return min(placement.width_ft, placement.depth_ft) / 2


def rectangle(placement: Placement) -> Polygon:
    """Ground that a placed rectangle takes, and the square round a circle."""
    return box(placement.x_ft, placement.y_ft, placement.right_ft, placement.top_ft)


def outline(ring: Ring) -> Polygon:
    """Area inside a ring."""
    return Polygon(ring)


def areas_only(shape: BaseGeometry) -> BaseGeometry:
    """The areas of a shape, without the lines and points in which areas only touch.

    GEOS fails to intersect an empty shape with a collection of areas and lines; what may be one goes through here.
    """
    if isinstance(shape, Polygon | MultiPolygon):
        return shape
    return MultiPolygon([part for part in get_parts(shape) if isinstance(part, Polygon)])


def side_on_plan(side: LocalSide, front: Front) -> Front:
    """Side of the plan on which a room's own side lies; left and right are seen looking out to the front."""
    return SIDES[(SIDES.index(front) + _QUARTERS[side]) % 4]


def side_ends(placement: Placement, side: Front) -> tuple[Point, Point]:
    """Two ends of a placed room's edge on one side of the plan, counter-clockwise; of a circle, of its square's."""
    left, right, bottom, top = placement.x_ft, placement.right_ft, placement.y_ft, placement.top_ft
    ends: dict[Front, tuple[Point, Point]] = {
        "+x": ((right, bottom), (right, top)),
        "+y": ((right, top), (left, top)),
        "-x": ((left, top), (left, bottom)),
        "-y": ((left, bottom), (right, bottom)),
    }
    return ends[side]


def stepped_over(placement: Placement, side: Front) -> tuple[Point, Point]:
    """Two ends of the stretch over which one steps in on a side: the edge; of a circle the chord there, as wide as the
    widest way.
    """
    ends = side_ends(placement, side)
    if not placement.is_circle:
        return ends
    radius, (x, y) = radius_ft(placement), placement.centre
    half = min(WIDEST_WAY_FT / 2, radius)
    away = sqrt(radius**2 - half**2)
    (ax, ay), (bx, by) = ends
    along = (half * (bx - ax) / (2 * radius), half * (by - ay) / (2 * radius))
    out_x, out_y = FRONT_VECTORS[side]
    at = (x + away * out_x, y + away * out_y)
    return (at[0] - along[0], at[1] - along[1]), (at[0] + along[0], at[1] + along[1])


def shared_edge_ft(one: Placement, other: Placement) -> float:
    """Length of edge that two placed rooms share; 0 where they do not touch or only overlap.

    A circle shares none.
    """
    if one.is_circle or other.is_circle:
        return 0.0
    gap_x = max(one.x_ft, other.x_ft) - min(one.right_ft, other.right_ft)
    gap_y = max(one.y_ft, other.y_ft) - min(one.top_ft, other.top_ft)
    touching = [-along for across, along in ((gap_x, gap_y), (gap_y, gap_x)) if abs(across) <= TOLERANCE_FT]
    return max(0.0, *touching) if touching else 0.0


def middle(ends: tuple[Point, Point]) -> Point:
    """Point halfway between two."""
    (x0, y0), (x1, y1) = ends
    return ((x0 + x1) / 2, (y0 + y1) / 2)
