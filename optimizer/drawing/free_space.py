"""Where on a crowded plan a box of a given size is free."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.marks import Box
from optimizer.drawing.outlines import polygon_of
from optimizer.site import Point

Points = NDArray[np.float64]
SMALL_SHARE = 0.1
FIRST_BATCH = 16
"""Places asked about at once, the best first: mostly one of them is free. Each further batch is twice as large."""


def union_of(*things: Box | BaseGeometry) -> BaseGeometry:
    """Everything that is taken, boxes and shapes, as one prepared geometry."""
    shapes = [thing if isinstance(thing, BaseGeometry) else polygon_of(thing) for thing in things]
    merged = shapely.union_all(shapes) if shapes else MultiPolygon()
    shapely.prepare(merged)
    return merged


def centres_within(bounds: Box, *, width_ft: float, height_ft: float, step_ft: float) -> Points:
    """Centres on a grid at which a box of that size stays within the bounds; none if it is too large."""
    x1, y1, x2, y2 = bounds
    free_x, free_y = x2 - x1 - width_ft, y2 - y1 - height_ft
    if free_x < 0 or free_y < 0:
        return np.empty((0, 2))
    xs = x1 + width_ft / 2 + np.linspace(0.0, free_x, 1 + int(free_x / step_ft))
    ys = y1 + height_ft / 2 + np.linspace(0.0, free_y, 1 + int(free_y / step_ft))
    return np.stack([grid.ravel() for grid in np.meshgrid(xs, ys)], axis=1)


def by_distance(centres: Points, to: Point, *, edge_of: BaseGeometry | None = None) -> Points:
    """Sort centres by their distance to a point, or first by that to a shape and only a little by the point.

    Distances are rounded, so that the order is the same on every machine.
    """
    away = centres - np.asarray(to)
    distances = np.sqrt((away**2).sum(axis=1))
    if edge_of is not None:
        distances = shapely.distance(shapely.points(centres), edge_of) + SMALL_SHARE * distances
    distances = np.round(distances, 3)
    return centres[np.argsort(distances, kind="stable")]


def boxes_about(points: Points, *, width_ft: float, height_ft: float) -> NDArray[np.object_]:
    """Boxes of that size about the points, as polygons."""
    half = np.array([width_ft / 2, height_ft / 2])
    low, high = points - half, points + half
    return np.asarray(shapely.box(low[:, 0], low[:, 1], high[:, 0], high[:, 1]))


def free_places(
    centres: Points | Sequence[Point], *taken: BaseGeometry, width_ft: float, height_ft: float
) -> Iterator[Points]:
    """Centres at which a box of that size touches nothing that is taken, in their order, batch by batch."""
    points = np.asarray(centres, dtype=float).reshape(-1, 2)
    start, size = 0, FIRST_BATCH
    while start < len(points):
        free = points[start : start + size]
        boxes = boxes_about(free, width_ft=width_ft, height_ft=height_ft)
        for shape in taken:
            is_free = ~shapely.intersects(shape, boxes)
            free, boxes = free[is_free], boxes[is_free]
        yield free
        start, size = start + size, 2 * size


def first_free(
    centres: Points | Sequence[Point], *taken: BaseGeometry, width_ft: float, height_ft: float
) -> Point | None:
    """Find the first centre at which a box of that size touches nothing that is taken, or None."""
    for free in free_places(centres, *taken, width_ft=width_ft, height_ft=height_ft):
        if len(free):
            return (float(free[0, 0]), float(free[0, 1]))
    return None
