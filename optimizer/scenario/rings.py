"""Small geometry of outlines as they are read: which way round, which edge a point lies on, which way it looks."""

import math
from collections.abc import Iterator
from typing import Final

from shapely import LinearRing, MultiPoint, Polygon
from shapely.validation import explain_validity

from optimizer.site import Point, Ring

_LEAST_SQFT: Final = 0.01


def signed_area_sqft(ring: Ring) -> float:
    """Area of a ring [sq ft], positive where it runs counter-clockwise."""
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in _edges(ring)) / 2


def counter_clockwise(ring: Ring) -> Ring:
    """Give the same ring from the same first corner, counter-clockwise."""
    return ring if signed_area_sqft(ring) > 0 else (ring[0], *reversed(ring[1:]))


def distance_ft(ring: Ring, point: Point) -> float:
    """Distance from a point to the nearest edge of a ring [ft]."""
    return min(_to_edge_ft(start, end, point) for start, end in _edges(ring))


def outward(ring: Ring, point: Point) -> Point:
    """Give the unit vector that points out of a counter-clockwise ring at the edge nearest to the point."""
    (ax, ay), (bx, by) = min(_edges(ring), key=lambda edge: _to_edge_ft(edge[0], edge[1], point))
    length = math.hypot(bx - ax, by - ay)
    # Adding 0 turns a negative zero into a plain one.
    return (by - ay) / length + 0.0, (ax - bx) / length + 0.0


def beyond_ft(ring: Ring, point: Point, width_ft: float) -> float:
    """How far an opening of a width round a point of a counter-clockwise ring reaches past the ring's edges [ft]."""
    x, y = outward(ring, point)
    half = width_ft / 2
    return max(distance_ft(ring, (point[0] - side * half * y, point[1] + side * half * x)) for side in (-1, 1))


def ring_fault(ring: Ring) -> str | None:
    """Say what keeps a ring from being an outline, or None: repeated corners, no area, edges that meet."""
    corner = next((start for start, end in _edges(ring) if start == end), None)
    if corner:
        return f"the corner {point_text(corner)} twice in a row"
    is_simple = LinearRing(ring).is_simple
    # The hull tells corners on one line from edges that cross, whose areas may cancel to nothing.
    if MultiPoint(ring).convex_hull.area < _LEAST_SQFT or (is_simple and abs(signed_area_sqft(ring)) < _LEAST_SQFT):
        return "an outline without area"
    return None if is_simple else f"edges that cross or touch ({explain_validity(Polygon(ring))})"


def outside_ft(ring: Ring, boundary: Ring) -> float:
    """How far a ring reaches out of the boundary [ft]; 0 where it stays inside."""
    # What is outside is farthest out at one of its own corners.
    outside = Polygon(ring).difference(Polygon(boundary))
    if outside.is_empty:
        return 0.0
    parts = getattr(outside, "geoms", (outside,))
    corners = (corner for part in parts if part.area > 0 for corner in part.exterior.coords)
    return max((distance_ft(boundary, (x, y)) for x, y in corners), default=0.0)


def point_text(point: Point) -> str:
    """Write a point as in the file: [12, 4.5], in feet."""
    return f"[{point[0]:.6g}, {point[1]:.6g}]"


def _edges(ring: Ring) -> Iterator[tuple[Point, Point]]:
    """Edges in order, the last one back to the first corner."""
    return zip(ring, (*ring[1:], ring[0]), strict=True)


def _to_edge_ft(start: Point, end: Point, point: Point) -> float:
    """Distance from a point to an edge [ft]."""
    (ax, ay), (bx, by), (px, py) = start, end, point
    span = (bx - ax) ** 2 + (by - ay) ** 2
    along = max(0.0, min(1.0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / span)) if span else 0.0
    return math.hypot(px - ax - along * (bx - ax), py - ay - along * (by - ay))
