"""Shortest ways on any polygon: a visibility graph over the corners that ways bend at.

A shortest way among straight-edged obstacles bends only at reflex corners of the free ground; so these, with the
places asked for, are all the nodes there are.
"""

from typing import Any, Final

import numpy as np
import scipy
import shapely
from numpy.typing import NDArray

from optimizer.circulation.ground import Ground
from optimizer.site import Point

_TOUCH_FT: Final = 1e-6  # edges that run along the ground's own edge are in it, whatever rounding says
_LEAST_FT: Final = 1e-9  # two places at one point are joined, though a sparse matrix has no zero lengths

Coordinates = NDArray[np.float64]


def turning_points(domain: Ground) -> Coordinates:
    """Reflex corners of a polygon or multi-polygon, as rows (x, y)."""
    rings = [ring for part in shapely.get_parts(shapely.orient_polygons(domain)) for ring in _rings(part)]
    return np.concatenate([np.empty((0, 2)), *(_reflex(shapely.get_coordinates(ring)[:-1]) for ring in rings)])


def _rings(part: Any) -> tuple[Any, ...]:
    return () if part.is_empty else (part.exterior, *part.interiors)


def _reflex(corners: Coordinates) -> Coordinates:
    before, after = corners - np.roll(corners, 1, axis=0), np.roll(corners, -1, axis=0) - corners
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    return corners[turn < 0]


def lengths_in_sight(domain: Ground, points: Coordinates) -> "scipy.sparse.csr_array":
    """Straight lengths between all pairs of points whose straight line stays in the domain."""
    first, second = np.triu_indices(len(points), k=1)
    seen = in_sight(domain, points[first], points[second])
    first, second = first[seen], second[seen]
    lengths = np.maximum(np.hypot(*(points[first] - points[second]).T), _LEAST_FT)
    return scipy.sparse.csr_array((lengths, (first, second)), shape=(len(points), len(points)))


def in_sight(domain: Ground, starts: Coordinates, ends: Coordinates) -> NDArray[np.bool_]:
    """Whether each straight line from a start to its end stays in the domain."""
    wider = domain.buffer(_TOUCH_FT, join_style="mitre")
    shapely.prepare(wider)
    seen: NDArray[np.bool_] = shapely.covers(wider, shapely.linestrings(np.stack([starts, ends], axis=1)))
    return seen


def all_shortest(domain: Ground, points: Coordinates) -> tuple[Coordinates, NDArray[np.int32]]:
    """Lengths of the shortest ways between all pairs of points (infinite: none), and each one's last but one point."""
    return scipy.sparse.csgraph.dijkstra(lengths_in_sight(domain, points), directed=False, return_predecessors=True)  # type: ignore[no-any-return]


def route(previous: NDArray[np.int32], start: int, end: int) -> tuple[int, ...]:
    """Points, by index, along a shortest way that exists."""
    steps = [end]
    while steps[-1] != start:
        steps.append(int(previous[start, steps[-1]]))
    return tuple(reversed(steps))


def shortest_way(domain: Ground, start: Point, end: Point) -> tuple[float, tuple[Point, ...]] | None:
    """Shortest way between two points of a polygon: its length [ft] and its points; None where there is none."""
    points = np.concatenate([np.array([start, end], dtype=float), turning_points(domain)])
    lengths, previous = all_shortest(domain, points)
    if not np.isfinite(lengths[0, 1]):
        return None
    return float(lengths[0, 1]), tuple((float(points[i, 0]), float(points[i, 1])) for i in route(previous, 0, 1))
