"""Surfaces of a figure as corners and triangles: prisms, discs laid over the ground, and round crowns."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

Heights = Callable[[NDArray[np.float64]], NDArray[np.float64]]
"""Height of the ground at points (n, 2) [ft]."""
DRAPE_FT: Final = 4.0
"""Side of the pieces in which a cover follows the ground."""
_FENCE_FT: Final = 0.3
_PANEL_FT: Final = 6.0
"""Sizes as drawn; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Mesh:
    """Corners (n, 3) [ft] and triangles (m, 3) of corner numbers."""

    corners: NDArray[np.float64]
    triangles: NDArray[np.int64]


EMPTY: Final = Mesh(np.empty((0, 3)), np.empty((0, 3), dtype=np.int64))


def joined(meshes: Sequence[Mesh]) -> Mesh:
    """All meshes as one."""
    starts = np.cumsum([0, *(len(mesh.corners) for mesh in meshes)])
    return Mesh(
        np.concatenate([EMPTY.corners, *(mesh.corners for mesh in meshes)]),
        np.concatenate([EMPTY.triangles, *(m.triangles + s for m, s in zip(meshes, starts, strict=False))]),
    )


def flat(shape: BaseGeometry) -> Mesh:
    """Cover a polygon, holes left open, with triangles at height 0, all facing up: light falls on them alike."""
    polygons = [part for part in shapely.get_parts(shape) if isinstance(part, Polygon) and part.area > 1e-6]
    found = shapely.get_parts(shapely.constrained_delaunay_triangles(np.array(polygons, dtype=object)))
    if not len(found):
        return EMPTY
    facing_up = shapely.orient_polygons(found, exterior_cw=False)
    corners = np.stack([shapely.get_coordinates(triangle)[:3] for triangle in facing_up]).reshape(-1, 2)
    return Mesh(np.column_stack([corners, np.zeros(len(corners))]), np.arange(len(corners)).reshape(-1, 3))


def lifted(mesh: Mesh, z_ft: float | NDArray[np.float64]) -> Mesh:
    """Set the height of a mesh, one for all corners or one for each."""
    corners = mesh.corners.copy()
    corners[:, 2] = z_ft
    return Mesh(corners, mesh.triangles)


def prism(shape: Polygon, low_ft: float, high_ft: float) -> Mesh:
    """Build upright walls on a polygon's outline, with floor and roof."""
    ring = shapely.get_coordinates(shape.exterior)[:-1]
    n = len(ring)
    walls = np.concatenate([np.column_stack([ring, np.full(n, z)]) for z in (low_ft, high_ft)])
    start, end = np.arange(n), np.roll(np.arange(n), -1)
    sides = np.concatenate([np.stack([start, end, end + n], axis=1), np.stack([start, end + n, start + n], axis=1)])
    cover = flat(shape)
    return joined([Mesh(walls, sides), lifted(cover, low_ft), lifted(cover, high_ft)])


def curtain(outline: NDArray[np.float64], low_ft: NDArray[np.float64], high_ft: NDArray[np.float64]) -> Mesh:
    """Build an upright skin along points (n, 2) between two heights at each."""
    n = len(outline)
    corners = np.concatenate([np.column_stack([outline, low_ft]), np.column_stack([outline, high_ft])])
    a = np.arange(n - 1)
    quads = [np.stack([a, a + 1, a + 1 + n], axis=1), np.stack([a, a + 1 + n, a + n], axis=1)]
    return Mesh(corners, np.concatenate(quads))


def draped(shape: BaseGeometry, ground: Heights) -> Mesh:
    """Cover a shape laid over the ground in pieces of 4 ft."""
    if shape.is_empty:
        return EMPTY
    x1, y1, x2, y2 = shape.bounds
    xs, ys = np.meshgrid(np.arange(x1, x2, DRAPE_FT), np.arange(y1, y2, DRAPE_FT))
    cells = shapely.box(xs.ravel(), ys.ravel(), xs.ravel() + DRAPE_FT, ys.ravel() + DRAPE_FT)
    pieces = shapely.get_parts(shapely.intersection(cells, shape))
    cover = flat(shapely.geometrycollections(pieces))
    return lifted(cover, ground(cover.corners[:, :2])) if len(cover.corners) else EMPTY


def ball(at: tuple[float, float], low_ft: float, high_ft: float, radius_ft: float) -> Mesh:
    """Build a crown: an ellipsoid between two heights."""
    rings, steps = 7, 16
    rise, turn = np.meshgrid(np.linspace(-np.pi / 2, np.pi / 2, rings), np.arange(steps) * 2 * np.pi / steps)
    middle, half = (low_ft + high_ft) / 2, (high_ft - low_ft) / 2
    x, y = at[0] + radius_ft * np.cos(rise) * np.cos(turn), at[1] + radius_ft * np.cos(rise) * np.sin(turn)
    corners = np.stack([x, y, middle + half * np.sin(rise)], axis=2).reshape(-1, 3)
    number = np.arange(rings * steps).reshape(steps, rings)
    beside = np.roll(number, -1, axis=0)
    a, b, c, d = number[:, :-1], beside[:, :-1], beside[:, 1:], number[:, 1:]
    quads = [np.stack(three, axis=2).reshape(-1, 3) for three in ((a, b, c), (a, c, d))]
    return Mesh(corners, np.concatenate(quads))


def fence(line: Sequence[tuple[float, float]], height_ft: float, ground: Heights) -> Mesh:
    """Panels of about 6 ft along a line, each standing on its own ground."""
    corners = shapely.get_coordinates(shapely.segmentize(LineString(line), _PANEL_FT))
    panels = (LineString(pair).buffer(_FENCE_FT / 2, cap_style="flat") for pair in pairwise(corners))
    feet = ((panel, float(ground(np.array(panel.centroid.coords)).min())) for panel in panels)
    return joined([prism(panel, foot, foot + height_ft) for panel, foot in feet])
