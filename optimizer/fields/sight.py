"""What an eye sees: straight lines in space past walls, fences and counters.

Lines that exactly graze a screen, on plan or over its top, are not hidden.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import inf
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.site import Point

Numbers = NDArray[np.float64]
Booleans = NDArray[np.bool_]
_SIDE: Final = 3
_MANY, _STEP = 34, 21  # two Fibonacci numbers in a row spread most evenly
FEW: Final = tuple(
    ((column + 0.5) / _SIDE - 0.5, (row + 0.5) / _SIDE - 0.5) for row in range(_SIDE) for column in range(_SIDE)
)
"""Samples of a rectangle from its centre, as shares of its width and depth: the middles of nine equal parts."""
MANY: Final = tuple(
    ((index + 0.5) / _MANY - 0.5, (index * _STEP % _MANY + 0.5) / _MANY - 0.5) for index in range(_MANY)
)
"""The same on a Fibonacci lattice: no two lie on one line along a side, so that the share beyond such a line is right
within 1.5 hundredths."""
_GRAZE_FT: Final = 1e-4  # outlines are so much smaller, so that a line along a wall is free, whatever rounding says
_SEAM_FT: Final = 1e-5  # pieces of an outline overlap by this, so that no line slips through between two
_FENCE_FT: Final = 1e-4  # half the thickness of a line
_EVEN: Final = 1e-9


@dataclass(frozen=True, slots=True)
class Eye:
    """An eye: where, and how high above the file's datum [ft]."""

    at: Point
    z_ft: float


@dataclass(frozen=True, slots=True)
class Screen:
    """What hides: an area or a line on plan, from a bottom to a top above the file's datum [ft]."""

    outline: BaseGeometry
    top_z_ft: float
    bottom_z_ft: float = -inf


@dataclass(frozen=True, slots=True, eq=False)
class _Piece:
    """Convex part of a screen: inside, every normal (k, 2) times the point is at most its offset (k,)."""

    normals: Numbers
    offsets: Numbers
    bounds: tuple[float, float, float, float]


def sample_points(shape: BaseGeometry, z_ft: float, parts: Sequence[tuple[float, float]]) -> Numbers:
    """Samples (n, 3) [ft] of what is looked at, all at one height, for shares of many positions at once.

    An area is sampled at those of the parts of its bounds that lie in it, else at one point of it; a line at as many
    points along it; a point at itself.
    """
    if isinstance(shape, Polygon):
        x0, y0, x1, y1 = shape.bounds
        grid = np.array([((x0 + x1) / 2 + a * (x1 - x0), (y0 + y1) / 2 + b * (y1 - y0)) for a, b in parts])
        inside = grid[shapely.intersects_xy(shape, grid[:, 0], grid[:, 1])]
        spots = inside if len(inside) else shapely.get_coordinates(shape.representative_point())
    elif isinstance(shape, LineString):
        at = (np.arange(len(parts)) + 0.5) / len(parts)
        spots = shapely.get_coordinates(shapely.line_interpolate_point(shape, at, normalized=True))
    else:
        spots = shapely.get_coordinates(shape)
    return np.column_stack([spots, np.full(len(spots), z_ft)])


def visible_share(eyes: Sequence[Eye], points: Numbers, screens: Iterable[Screen]) -> float:
    """Mean over the eyes of the share of the points (n, 3) [ft] that they see past the screens, 0 to 1."""
    starts = np.repeat(np.array([(*eye.at, eye.z_ft) for eye in eyes], dtype=np.float64), len(points), axis=0)
    return float(1.0 - blocked(starts, np.tile(points, (len(eyes), 1)), screens).mean())


def blocked(starts: Numbers, ends: Numbers, screens: Iterable[Screen]) -> Booleans:
    """Whether a screen crosses each straight line from a start (n, 3) to its end (n, 3) [ft], as (n,)."""
    first, last = starts.T.copy(), ends.T.copy()  # an axis a row is twice as fast
    low, high = np.minimum(first, last), np.maximum(first, last)
    result = np.zeros(len(starts), dtype=np.bool_)
    for screen in screens:
        level = ~result & (low[2] < screen.top_z_ft - _EVEN) & (high[2] > screen.bottom_z_ft + _EVEN)
        for piece in _pieces(screen.outline):
            x0, y0, x1, y1 = piece.bounds
            near = np.flatnonzero(level & (low[0] < x1) & (high[0] > x0) & (low[1] < y1) & (high[1] > y0))
            if len(near):
                result[near] |= _crosses(piece, screen, first[:, near], last[:, near])
    return result


def _crosses(piece: _Piece, screen: Screen, starts: Numbers, ends: Numbers) -> Booleans:
    """Clip each line against the piece; it crosses where a length is left that is not over or under the screen.

    Starts and ends are (3, n) [ft].
    """
    number = starts.shape[1]
    enter, leave, outside = np.zeros(number), np.ones(number), np.zeros(number, dtype=np.bool_)
    for (x, y), offset in zip(piece.normals, piece.offsets, strict=True):
        first = starts[0] * x + starts[1] * y - offset
        speed = ends[0] * x + ends[1] * y - offset - first
        with np.errstate(divide="ignore", invalid="ignore"):
            at = -first / speed
        enter = np.where(speed < 0, np.maximum(enter, at), enter)
        leave = np.where(speed > 0, np.minimum(leave, at), leave)
        outside |= (speed == 0) & (first >= 0)
    rise = ends[2] - starts[2]
    z_in, z_out = starts[2] + enter * rise, starts[2] + leave * rise
    passes = np.minimum(z_in, z_out) < screen.top_z_ft - _EVEN
    passes &= np.maximum(z_in, z_out) > screen.bottom_z_ft + _EVEN
    return np.asarray(~outside & (leave - enter > _EVEN) & passes)


@lru_cache(maxsize=2048)
def _pieces(outline: BaseGeometry) -> tuple[_Piece, ...]:
    """Convex pieces of a screen's outline."""
    if isinstance(outline, LineString):
        ends = pairwise(outline.coords)
        thin = [LineString(pair).buffer(_FENCE_FT, cap_style="square") for pair in ends]
        return tuple(_piece(part, 0.0) for part in thin)
    inner = outline.buffer(-_GRAZE_FT, join_style="mitre")
    if inner.convex_hull.area - inner.area < _EVEN:
        return () if inner.is_empty else (_piece(inner, 0.0),)
    return tuple(_piece(part, _SEAM_FT) for part in shapely.constrained_delaunay_triangles(inner).geoms)


def _piece(part: Polygon, wider_ft: float) -> _Piece:
    corners = shapely.get_coordinates(shapely.orient_polygons(part.normalize()))
    along = np.diff(corners, axis=0)
    along, corners = along[np.hypot(*along.T) > _EVEN], corners[:-1][np.hypot(*along.T) > _EVEN]
    normals = np.column_stack([along[:, 1], -along[:, 0]]) / np.hypot(*along.T)[:, None]
    x0, y0, x1, y1 = part.bounds
    bounds = (x0 - wider_ft, y0 - wider_ft, x1 + wider_ft, y1 + wider_ft)
    return _Piece(normals, np.sum(normals * corners, axis=1) + wider_ft, bounds)
