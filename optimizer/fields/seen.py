"""What of an area or a line at one height an eye sees: exact, by what every screen hides of it.

A screen hides, at the height of what is looked at, its own outline drawn larger about the eye, from `near` to `far`
times as far away. Of a convex outline all of these together are the convex hull of the nearest and the farthest. So a
share has no error of samples; what rounding adds to it is below 1e-6.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import inf
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.fields.sight import Eye, Numbers, Screen, visible_share

_EVEN: Final = 1e-9
_NEAREST_FT: Final = 1e-4
"""An eye at a screen counts as so far from it."""


@dataclass(frozen=True, slots=True)
class Target:
    """What is looked at: an area, line or point on plan, at one height above the file's datum [ft]."""

    shape: BaseGeometry
    z_ft: float


def seen_share(eye: Eye, target: Target, screens: Iterable[Screen]) -> float:
    """Share, 0 to 1, of an area or of a line's length that the eye sees; of a point 0 or 1, 1 where a line grazes."""
    shape = target.shape
    whole = shape.area or shape.length
    if not whole:
        points = np.column_stack([shapely.get_coordinates(shape), np.full(1, target.z_ft)])
        return visible_share((eye,), points, screens)
    seen = seen_part(eye, target, screens)
    return float((seen.area if shape.area else seen.length) / whole)


def seen_part(eye: Eye, target: Target, screens: Iterable[Screen]) -> BaseGeometry:
    """Part of an area or a line that the eye sees."""
    hidden = [part for screen in screens for part in _hidden(eye, target, screen)]
    seen: BaseGeometry = target.shape.difference(shapely.union_all(hidden)) if hidden else target.shape
    return seen


def _hidden(eye: Eye, target: Target, screen: Screen) -> Iterator[BaseGeometry]:
    """What a screen hides at the target's height, as far as the target reaches: a convex shape for each convex part."""
    times = _times(screen, eye.z_ft, target.z_ft)
    if times is None:
        return
    at, (x0, y0, x1, y1) = np.array(eye.at), target.shape.bounds
    reach_ft = float(np.hypot(max(abs(x0 - at[0]), abs(x1 - at[0])), max(abs(y0 - at[1]), abs(y1 - at[1]))))
    for corners in _convex_parts(screen.outline):
        away = corners - at
        near, far = times[0], min(times[1], reach_ft / max(_distance_ft(away), _NEAREST_FT))
        if far <= near:
            continue
        spread = at + np.concatenate([near * away, far * away])
        low, high = spread.min(axis=0), spread.max(axis=0)
        if low[0] < x1 and low[1] < y1 and high[0] > x0 and high[1] > y0:
            yield shapely.multipoints(spread).convex_hull


def _times(screen: Screen, eye_ft: float, z_ft: float) -> tuple[float, float] | None:
    """How many times as far from the eye as the screen what it hides begins and ends; None where it hides nothing.

    By similar triangles, from the shares of a line to the target on which it is between the screen's bottom and top.
    """
    fall = eye_ft - z_ft
    if abs(fall) < _EVEN:
        return (1.0, inf) if screen.bottom_z_ft + _EVEN < z_ft < screen.top_z_ft - _EVEN else None
    ends = sorted(((eye_ft - screen.top_z_ft) / fall, (eye_ft - screen.bottom_z_ft) / fall))
    enter, leave = max(0.0, ends[0]), min(1.0, ends[1])
    return (1.0 / leave, 1.0 / enter if enter > 0 else inf) if leave - enter > _EVEN else None


def _distance_ft(corners: Numbers) -> float:
    """Distance of the origin from a convex ring (n, 2), or from a line of two points [ft]."""
    start, along = corners, np.roll(corners, -1, axis=0) - corners
    squared = np.maximum((along**2).sum(axis=1), _EVEN)
    at = np.clip(-(start * along).sum(axis=1) / squared, 0.0, 1.0)
    return float(np.hypot(*(start + at[:, None] * along).T).min())


@lru_cache(maxsize=2048)
def _convex_parts(outline: BaseGeometry) -> tuple[Numbers, ...]:
    """Corners (n, 2) of convex parts that make up an outline."""
    if isinstance(outline, LineString):
        return tuple(np.array(ends) for ends in pairwise(outline.coords))
    if outline.convex_hull.area - outline.area < _EVEN:
        return (shapely.get_coordinates(outline)[:-1],)
    parts: tuple[Polygon, ...] = shapely.constrained_delaunay_triangles(outline).geoms
    return tuple(shapely.get_coordinates(part)[:-1] for part in parts)
