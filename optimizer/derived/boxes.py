"""Lines and boxes across a heading: jambs of doors and gates, ground before them, flights."""

from shapely import Polygon

from optimizer.site import Point


def jambs(at: Point, heading: Point, width_ft: float, ahead_ft: float = 0.0) -> tuple[Point, Point]:
    """Right and left end of a line so wide across a heading (a unit vector), so far ahead of its middle `at`."""
    (x, y), (to_x, to_y), half = at, heading, width_ft / 2
    x, y = x + ahead_ft * to_x, y + ahead_ft * to_y
    return ((x + half * to_y, y - half * to_x), (x - half * to_y, y + half * to_x))


def box_along(at: Point, heading: Point, width_ft: float, start_ft: float, end_ft: float) -> Polygon:
    """Rectangle so wide across a heading, from `start_ft` to `end_ft` ahead of `at`."""
    start, end = (jambs(at, heading, width_ft, ahead_ft) for ahead_ft in (start_ft, end_ft))
    return Polygon([*start, *reversed(end)])
