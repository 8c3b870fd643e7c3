"""Edges that two shapes share, and the slots between them that are too narrow to use."""

from collections.abc import Iterator
from itertools import pairwise, product
from math import hypot
from typing import Final

import numpy as np
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.check.case import TOLERANCE_FT
from optimizer.site import Point

_PARALLEL: Final = 1e-3

Edge = tuple[Point, Point]


def shared_edge_ft(one: BaseGeometry, other: BaseGeometry) -> float:
    """Longest straight piece of edge that two polygons share [ft]; 0 for shapes without edges."""
    if one.distance(other) > TOLERANCE_FT:
        return 0.0
    return max((_common_ft(a, b) for a, b in product(_edges(one), _edges(other))), default=0.0)


def slot_sqft(room: BaseGeometry, thing: Polygon, width_ft: float) -> float:
    """Area between a room and a thing that it touches which is narrower than a width, the thing's own left out."""
    grown = room.buffer(TOLERANCE_FT, join_style="mitre")
    closed = _closed(grown.union(thing), width_ft)
    return float(closed.difference(grown.union(thing).union(_closed(thing, width_ft))).area)


def _closed(shape: BaseGeometry, width_ft: float) -> BaseGeometry:
    """Shape with every slot narrower than a width filled."""
    # The room has grown by a tolerance, and a gap may lack one.
    half = width_ft / 2 - 1.5 * TOLERANCE_FT
    return shape.buffer(half, join_style="mitre").buffer(-half, join_style="mitre")


def _edges(shape: BaseGeometry) -> Iterator[Edge]:
    if shape.geom_type == "Polygon":
        yield from pairwise(shape.exterior.coords)


def _common_ft(one: Edge, other: Edge) -> float:
    """Length along which two edges run on one line; 0 where they do not."""
    start = np.array(one[0])
    along = np.array(one[1]) - start
    length = hypot(*along)
    along /= length
    across = np.array((-along[1], along[0]))
    ends = np.array(other) - start
    away = ends @ across
    if np.abs(away).max() > TOLERANCE_FT or abs(away[1] - away[0]) > _PARALLEL * hypot(*(ends[1] - ends[0])):
        return 0.0
    low, high = sorted(ends @ along)
    return max(0.0, min(length, float(high)) - max(0.0, float(low)))
