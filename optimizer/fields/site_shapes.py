"""Shapes of what is on a site: every layout on it asks for them, and they are made once."""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Final

import numpy as np
from shapely import LineString, Polygon, contains_xy, union_all
from shapely.geometry.base import BaseGeometry

from optimizer.fields.door_zones import door_zone
from optimizer.fields.ground import ground_of
from optimizer.layout import outline
from optimizer.site import Door, Site

_SLOPE_STEP_FT: Final = 4.0
SITES: Final = 16
"""Sites whose shapes are kept; older ones are forgotten, so that many yards after each other need no more memory."""


@dataclass(frozen=True, eq=False)
class SiteShapes:
    """Shapes of a site [ft]; those of buildings, structures and keep-outs are in the site's order."""

    site: Site

    @cached_property
    def boundary(self) -> Polygon:
        """Ground inside the boundary."""
        return outline(self.site.boundary)

    @cached_property
    def edges(self) -> tuple[LineString, ...]:
        """Edges of the boundary, from each corner to the next."""
        corners = self.site.boundary
        return tuple(LineString(ends) for ends in zip(corners, (*corners[1:], corners[0]), strict=True))

    @cached_property
    def buildings(self) -> tuple[Polygon, ...]:
        """Ground of the buildings."""
        return tuple(outline(building.outline) for building in self.site.buildings)

    @cached_property
    def houses(self) -> tuple[Polygon, ...]:
        """Ground of the buildings that one steps out of: those with a door; all of them where none has one."""
        with_doors = [shape for b, shape in zip(self.site.buildings, self.buildings, strict=True) if b.doors]
        return tuple(with_doors) or self.buildings

    @cached_property
    def structures(self) -> tuple[Polygon, ...]:
        """Ground under the kept structures."""
        return tuple(outline(structure.outline) for structure in self.site.structures)

    @cached_property
    def keep_outs(self) -> tuple[Polygon, ...]:
        """Kept-out ground."""
        return tuple(outline(area.outline) for area in self.site.keep_outs)

    @cached_property
    def door_zones(self) -> tuple[tuple[Door, Polygon], ...]:
        """Doors with the landings and steps in front of them."""
        return tuple((door, door_zone(self.site, b, door)) for b in self.site.buildings for door in b.doors)

    @cached_property
    def open_yard(self) -> BaseGeometry:
        """Ground of the yard that no building stands on."""
        return self.boundary.difference(union_all(self.buildings))

    def forbidding(self, use: str) -> BaseGeometry:
        """Kept-out ground that does not allow a use."""
        pairs = zip(self.site.keep_outs, self.keep_outs, strict=True)
        return union_all([ground for area, ground in pairs if use not in area.allow])


@lru_cache(maxsize=SITES)
def site_shapes(site: Site) -> SiteShapes:
    """Shapes of a site, each made when it is first asked for."""
    return SiteShapes(site)


def open_yard(site: Site) -> BaseGeometry:
    """Ground of the yard that no building stands on."""
    return site_shapes(site).open_yard


def site_slopes(site: Site) -> tuple[float, ...]:
    """Slopes of the open ground in the yard, about every 4 ft, as rise per run; (0,) without any."""
    yard = open_yard(site)
    left, low, right, top = yard.bounds
    grid = np.stack(np.meshgrid(np.arange(left, right, _SLOPE_STEP_FT), np.arange(low, top, _SLOPE_STEP_FT)), axis=-1)
    points = grid.reshape(-1, 2)
    inside = points[contains_xy(yard, points[:, 0], points[:, 1])]
    return tuple(float(slope) for slope in ground_of(site).slope(inside)) or (0.0,)
