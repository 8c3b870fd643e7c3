"""Height and slope of the ground between the spot levels that were given."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
import scipy
import shapely
from numpy.typing import ArrayLike, NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.fields.ground_planes import planes_of
from optimizer.site import Point, Site, SpotLevel

Numbers = NDArray[np.float64]
_ON_FT: Final = 1e-6  # what lies nearer to the hull than this lies on it
_FLAT: Final = 1e-9  # levels spread less than this share of their length span no triangle
_STEP_FT: Final = 0.1  # half the length over which a slope is taken


@dataclass(frozen=True, slots=True, eq=False)
class Ground:
    """Ground between spot levels.

    Linear on the Delaunay triangles of the levels. A point outside their hull has the level of the nearest point of
    the hull, on its edge. Levels on one line: linear along it, the same across it. One level: flat. None: 0.
    Between levels on one circle, as on a survey grid, several triangulations hold: of them the highest ground is taken,
    so that it depends on no order or hand.

    `hull` holds the edges of the hull as rows (x0, y0, x1, y1, z0, z1); `planes` for each triangle some (a, b, c), of
    which the lowest z = ax + by + c holds, shape (triangles, planes, 3).
    """

    hull: Numbers
    triangles: "scipy.spatial.Delaunay | None"
    planes: Numbers

    @property
    def is_known(self) -> bool:
        """Whether any level was given."""
        return bool(len(self.hull))

    def z_ft(self, points: ArrayLike) -> Numbers:
        """Height above the file's datum [ft] at points (n, 2) [ft], as (n,)."""
        asked = _rows(points)
        if not self.is_known:
            return np.zeros(len(asked))
        found = self._triangle(asked)
        z: Numbers = np.einsum("pkc,pc->pk", self.planes[found], _with_one(asked)).min(axis=1)
        outside = found < 0
        if outside.any():
            z[outside] = self._on_hull(asked[outside])[0]
        return z

    def slope(self, points: ArrayLike) -> Numbers:
        """Steepest rise per run at points (n, 2), as (n,); on a crease the mean of both sides."""
        asked = _rows(points)
        steps = np.array([(_STEP_FT, 0.0), (0.0, _STEP_FT)])
        rises = [(self.z_ft(asked + step) - self.z_ft(asked - step)) / (2 * _STEP_FT) for step in steps]
        return np.hypot(*rises)

    def covers(self, points: ArrayLike) -> NDArray[np.bool_]:
        """Whether each of the points (n, 2) lies within the hull of the levels, its edge included."""
        asked = _rows(points)
        if not self.is_known:
            return np.zeros(len(asked), dtype=np.bool_)
        return (self._triangle(asked) >= 0) | (self._on_hull(asked)[1] <= _ON_FT)

    def _triangle(self, asked: Numbers) -> NDArray[np.intp]:
        if self.triangles is None:
            return np.full(len(asked), -1)
        return np.asarray(self.triangles.find_simplex(asked), dtype=np.intp)

    def _on_hull(self, asked: Numbers) -> tuple[Numbers, Numbers]:
        """Level of the nearest point of the hull's edges [ft], and how far away it is [ft]."""
        start, along = self.hull[:, :2], self.hull[:, 2:4] - self.hull[:, :2]
        away = asked[:, None, :] - start
        squared = np.maximum(np.sum(along**2, axis=1), np.finfo(float).tiny)
        share = np.clip(np.sum(away * along, axis=2) / squared, 0.0, 1.0)
        distance = np.hypot(*np.moveaxis(away - share[:, :, None] * along, 2, 0))
        nearest = distance.argmin(axis=1)
        rows = np.arange(len(asked))
        z0, z1 = self.hull[nearest, 4], self.hull[nearest, 5]
        return z0 + share[rows, nearest] * (z1 - z0), distance[rows, nearest]


def ground_of(site: Site) -> Ground:
    """Ground of a site, made once for each set of levels."""
    return _of_levels(site.levels)


def ground_z_ft(site: Site, points: Sequence[Point]) -> Numbers:
    """Height of the ground above the file's datum at each point [ft], as `Ground.z_ft` says."""
    return ground_of(site).z_ft(points)


def ground_at_ft(site: Site, at: Point) -> float:
    """Height of the ground above the file's datum at one point [ft]."""
    return float(ground_of(site).z_ft([at])[0])


def steep_ground(site: Site, steepest: float) -> BaseGeometry:
    """Ground that surely rises more than this per run: triangles between spot levels, the whole of each."""
    ground = ground_of(site)
    if ground.triangles is None:
        return Polygon()
    slopes = np.hypot(ground.planes[:, :, 0], ground.planes[:, :, 1]).min(axis=1)
    corners = ground.triangles.points[ground.triangles.simplices[slopes > steepest]]
    return shapely.union_all([Polygon(triangle) for triangle in corners])


@lru_cache(maxsize=32)
def _of_levels(levels: tuple[SpotLevel, ...]) -> Ground:
    if not levels:
        return Ground(np.empty((0, 6)), None, np.empty((0, 1, 3)))
    spots = np.array([(*level.at, level.z_ft) for level in levels], dtype=np.float64)
    centred = spots[:, :2] - spots[:, :2].mean(axis=0)
    _, spread, directions = np.linalg.svd(centred, full_matrices=False)
    if len(spread) < 2 or spread[1] <= _FLAT * max(1.0, spread[0]):
        return Ground(_line(spots, centred @ directions[0]), None, np.zeros((1, 1, 3)))
    triangles = scipy.spatial.Delaunay(spots[:, :2])
    hull = spots[triangles.convex_hull]
    edges = np.column_stack([hull[:, 0, :2], hull[:, 1, :2], hull[:, :, 2]])
    return Ground(edges, triangles, planes_of(spots, triangles))


def _line(spots: Numbers, along: Numbers) -> Numbers:
    """Edges from each level to the next in the order along their line; one level is an edge without length."""
    ordered = spots[np.argsort(along, kind="stable")]
    first, last = (ordered[:-1], ordered[1:]) if len(ordered) > 1 else (ordered, ordered)
    return np.column_stack([first[:, :2], last[:, :2], first[:, 2], last[:, 2]])


def _with_one(points: Numbers) -> Numbers:
    return np.column_stack([points, np.ones(len(points))])


def _rows(points: ArrayLike) -> Numbers:
    return np.asarray(points, dtype=np.float64).reshape(-1, 2)
