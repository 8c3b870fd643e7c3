"""Outlines cut into convex pieces, of which a shadow is quickly known."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry, Polygon

_SAME: Final = 1e-9  # share of the area by which a convex outline may miss its hull


@lru_cache(maxsize=512)
def convex_pieces(outline: Geometry) -> tuple[NDArray[np.float64], ...]:
    """Corners of each convex piece, (k, 2) [ft], counter-clockwise, the first not repeated; a stretch of line has two.

    The arrays are shared: callers only read them.
    """
    return tuple(piece for part in shapely.get_parts(outline) for piece in _pieces(part))


def _pieces(part: Geometry) -> Iterator[NDArray[np.float64]]:
    if not isinstance(part, Polygon):
        yield from (np.array(ends) for ends in pairwise(shapely.get_coordinates(part)))
        return
    for polygon in (part,) if _is_convex(part) else _joined(part):
        yield shapely.get_coordinates(shapely.orient_polygons(polygon).exterior)[:-1]


def _joined(polygon: Polygon) -> list[Polygon]:
    """Triangles of an outline, put together again as long as they stay convex."""
    pieces: list[Polygon] = []
    for triangle in shapely.get_parts(shapely.constrained_delaunay_triangles(polygon)):
        unions = ((k, shapely.union(piece, triangle)) for k, piece in enumerate(pieces))
        fitting = next(((k, union) for k, union in unions if _is_convex(union)), None)
        if fitting is None:
            pieces.append(triangle)
        else:
            pieces[fitting[0]] = fitting[1]
    return pieces


def _is_convex(outline: Geometry) -> bool:
    hull_area = outline.convex_hull.area
    return isinstance(outline, Polygon) and hull_area - outline.area <= _SAME * hull_area
