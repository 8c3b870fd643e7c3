"""Paving that is there already: where it stays and is walked on, and which slabs may carry a room."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue.steps import step_rules
from optimizer.fields.ground import ground_of
from optimizer.fields.site_shapes import SITES, site_shapes
from optimizer.layout import TOLERANCE_FT, areas_only
from optimizer.site import Paving, PavingFate, Site

_SAMPLE_FT: Final = 2.0
_EVEN: Final = 1e-6
_NOTHING: Final = Polygon()


@lru_cache(maxsize=SITES)
def paving_to(site: Site, fate: PavingFate) -> tuple[tuple[Paving, BaseGeometry], ...]:
    """Existing paving with this fate, with its ground in the open yard."""
    yard = site_shapes(site).open_yard
    return tuple((p, areas_only(Polygon(p.outline).intersection(yard))) for p in site.paving if p.then == fate)


@lru_cache(maxsize=SITES)
def kept_paving(site: Site) -> BaseGeometry:
    """Ground of the paving that stays as it is."""
    return shapely.union_all([ground for _, ground in paving_to(site, "keep")])


def standing_paving(site: Site, rooms: Sequence[Polygon]) -> BaseGeometry:
    """Ground that stays paved as it is, the rooms left out: it is walked on, and nothing is laid on it.

    Of a slab that may carry a room, what lies beside the rooms stays.
    """
    if not site.paving:
        return _NOTHING
    slabs = [ground for _, ground in paving_to(site, "reuse")]
    return areas_only(shapely.union_all([kept_paving(site), *slabs]).difference(shapely.union_all([*rooms])))


def fall_of(site: Site, paving: Paving) -> float | None:
    """Fall of the ground that paving lies on, as of the plane that fits it best; None where no levels are given."""
    if not ground_of(site).is_known:
        return None
    x1, y1, x2, y2 = (ground := Polygon(paving.outline)).bounds
    grid = np.meshgrid(*(np.linspace(a, b, int((b - a) / _SAMPLE_FT) + 3) for a, b in ((x1, x2), (y1, y2))))
    points = np.column_stack([axis.ravel() for axis in grid])
    points = points[shapely.intersects_xy(ground, *points.T)]
    plane = np.column_stack([points - points.mean(axis=0), np.ones(len(points))])
    slope, *_ = np.linalg.lstsq(plane, ground_of(site).z_ft(points), rcond=None)
    return float(np.hypot(slope[0], slope[1]))


@lru_cache(maxsize=SITES)
def carrying_slabs(site: Site) -> tuple[tuple[Paving, BaseGeometry], ...]:
    """Slabs that may carry a room: those that fall enough, as far as levels say so."""
    return tuple(filter(lambda slab: _falls_enough(site, slab[0]), paving_to(site, "reuse")))


def _falls_enough(site: Site, paving: Paving) -> bool:
    fall = fall_of(site, paving)
    return fall is None or fall >= step_rules().slab_fall - _EVEN


def slab_under(site: Site, room: Polygon) -> Paving | None:
    """The slab that may carry a room, on which it lies wholly; None where there is none."""
    slabs = carrying_slabs(site)
    return next((p for p, ground in slabs if ground.buffer(TOLERANCE_FT, join_style="mitre").covers(room)), None)


def convex_parts(ground: BaseGeometry) -> Iterator[Polygon]:
    """Ground in convex pieces: it as it is where it is convex, else triangles."""
    for part in shapely.get_parts(areas_only(ground)):
        if part.area <= _EVEN:
            continue
        if not part.interiors and part.convex_hull.area - part.area < _EVEN:
            yield part.convex_hull
        else:
            triangles = shapely.get_parts(shapely.constrained_delaunay_triangles(part))
            yield from (triangle for triangle in triangles if triangle.area > _EVEN)


def paved_z_ft(site: Site, points: NDArray[np.float64]) -> NDArray[np.float64]:
    """Height of the paving that is there at points (n, 2): the level that the site gives, else the ground's [ft]."""
    z = ground_of(site).z_ft(points)
    for paving in site.paving:
        if paving.z_ft is not None:
            at = shapely.intersects_xy(Polygon(paving.outline).buffer(TOLERANCE_FT), points[:, 0], points[:, 1])
            z = np.where(at, paving.z_ft, z)
    return z
