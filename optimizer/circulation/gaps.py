"""Ground between a way and what it runs along: too narrow to plant, so it is paved with the way."""

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_LEAST_SQFT: Final = 0.01

Numbers = NDArray[np.int64]


class _Sides(NamedTuple):
    """Sides of rectangles, counter-clockwise: both ends, the unit vector along and that outwards, shapes (n, 2)."""

    start: Coordinates
    end: Coordinates
    along: Coordinates
    out: Coordinates


def gaps_between(pieces: Sequence[Polygon], others: Sequence[Polygon], reach_ft: float) -> tuple[Polygon, ...]:
    """Ground straight out of the sides of `others` up to each piece that lies before it no farther than `reach_ft`.

    Pieces are rectangles in any direction, the others have any outline. What the piece itself takes within reach is
    part of the ground. A piece that is one of the others is not before its own sides.
    """
    if not pieces or not others:
        return ()
    sides, corners = _sides(others), _corners(pieces)
    side, piece = _near(sides, corners, reach_ft)
    there = sides.out[side] * reach_ft
    start, end = sides.start[side], sides.end[side]
    bands = shapely.polygons(np.stack([start, end, end + there, start + there], axis=1))
    parts = shapely.intersection(bands, np.array(pieces, dtype=object)[piece])
    return tuple(_down_to(_Sides(*(of[side] for of in sides)), parts))


def gaps_round(pieces: Sequence[Polygon], circle: Polygon, reach_ft: float) -> Iterator[Polygon]:
    """Ground straight out of a circle, which is from its middle, up to each piece no farther than `reach_ft` from it.

    What piece and circle take themselves is part of the ground.
    """
    near = shapely.intersection(np.array(pieces, dtype=object), circle.buffer(reach_ft))
    for part in near[shapely.area(near) > _LEAST_SQFT] if len(pieces) else ():
        yield shapely.union(part, circle.centroid).convex_hull


def _corners(areas: Sequence[Polygon]) -> Coordinates:
    """Corners of rectangles, counter-clockwise, shape (n, 4, 2)."""
    rings = shapely.get_exterior_ring(shapely.orient_polygons(np.array(areas, dtype=object)))
    return np.asarray(shapely.get_coordinates(rings).reshape(-1, 5, 2)[:, :4])


def _sides(areas: Sequence[Polygon]) -> _Sides:
    rings = shapely.get_exterior_ring(shapely.orient_polygons(np.array(areas, dtype=object)))
    points, ring = shapely.get_coordinates(rings, return_index=True)
    is_side = ring[1:] == ring[:-1]
    start, end = points[:-1][is_side], points[1:][is_side]
    along = (end - start) / np.hypot(*(end - start).T)[:, None]
    return _Sides(start, end, along, np.stack([along[:, 1], -along[:, 0]], axis=1))


def _near(sides: _Sides, corners: Coordinates, reach_ft: float) -> tuple[Numbers, Numbers]:
    """Sides and pieces, by number, of which one may lie before the other and leave a gap."""
    flat = corners.reshape(-1, 2).T
    shape = (len(sides.start), len(corners), 4)
    along = (sides.along @ flat).reshape(shape) - (sides.along * sides.start).sum(axis=1)[:, None, None]
    out = (sides.out @ flat).reshape(shape) - (sides.out * sides.start).sum(axis=1)[:, None, None]
    length = ((sides.end - sides.start) * sides.along).sum(axis=1)[:, None]
    is_before = (along.min(axis=2) < length - _EVEN_FT) & (along.max(axis=2) > _EVEN_FT)
    nearest = out.min(axis=2)
    # One that lies square to the side and reaches it, or through it, leaves no gap anywhere.
    is_square = np.minimum(np.abs(out[..., 1] - out[..., 0]), np.abs(out[..., 2] - out[..., 1])) < _EVEN_FT
    in_reach = (nearest < reach_ft - _EVEN_FT) & (out.max(axis=2) > _EVEN_FT) & ~(is_square & (nearest < _EVEN_FT))
    side, piece = np.nonzero(is_before & in_reach)
    return side, piece


def _down_to(sides: _Sides, parts: NDArray[np.object_]) -> NDArray[np.object_]:
    """Convex parts, each before its side, with the ground between the two; those that leave none are left out."""
    corners, of = shapely.get_coordinates(parts, return_index=True)
    away = corners - sides.start[of]
    height = (away * sides.out[of]).sum(axis=1)
    gap_sqft = _gap_sqft((away * sides.along[of]).sum(axis=1), height, of, len(parts))
    kept = (gap_sqft > _LEAST_SQFT)[of]
    feet = (corners - height[:, None] * sides.out[of])[kept]
    owner = np.concatenate([of[kept], of[kept]])
    order = np.argsort(owner, kind="stable")
    _, numbers = np.unique(owner[order], return_inverse=True)
    points = np.concatenate([corners[kept], feet])[order]
    return np.asarray(shapely.convex_hull(shapely.multipoints(points, indices=numbers)))


def _gap_sqft(along: Coordinates, height: Coordinates, of: Numbers, count: int) -> Coordinates:
    """Area between each part and its side: what lies under the edges that run one way along it, or, if it is less,
    under those that run back.
    """
    step, mean = np.diff(along), (height[1:] + height[:-1]) / 2
    step[of[1:] != of[:-1]] = 0.0
    under = [np.bincount(of[1:], np.maximum(0.0, sign * step) * mean, count) for sign in (1.0, -1.0)]
    return np.minimum(*under)
