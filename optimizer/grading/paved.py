"""The paved rooms of a layout on the site's ground: who lies where, who touches whom."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import combinations
from math import ceil
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue.steps import step_rules
from optimizer.fields import SITES, Ground, SiteShapes, ground_of, site_shapes
from optimizer.fields.site_walls import open_edge_ft
from optimizer.layout import FRONT_VECTORS, TOLERANCE_FT, Placed, PlacedRoom, radius_ft
from optimizer.site import Door, Site

HUNDREDTH: Final = 100.0
_SERVES_FT: Final = 12.0  # common practice, no source: a bar stands 5 to 12 ft from the table that it serves


@dataclass(frozen=True)
class Paved:
    """Paved rooms in the layout's order, by number. Other rooms, such as a lawn, follow the ground."""

    site: Site
    ground: Ground
    rooms: tuple[PlacedRoom, ...]
    placed: Placed
    """All rooms of the layout."""

    @cached_property
    def boxes(self) -> NDArray[np.float64]:
        """Rows of left, lower, right and upper edge [ft]."""
        rows = [(p.x_ft, p.y_ft, p.right_ft, p.top_ft) for p in (room.placement for room in self.rooms)]
        return np.array(rows, dtype=np.float64).reshape(-1, 4)

    @property
    def houses(self) -> tuple[Polygon, ...]:
        """Ground of the buildings, in the site's order."""
        return self.shapes.buildings

    @cached_property
    def shapes(self) -> SiteShapes:
        """Shapes of the site."""
        return site_shapes(self.site)

    @cached_property
    def touching(self) -> tuple[tuple[int, int], ...]:
        """Pairs of rooms that share an edge."""
        pairs = combinations(range(len(self.rooms)), 2)
        return tuple(p for p in pairs if self._edge_ft(*p) > TOLERANCE_FT)

    @cached_property
    def serving(self) -> tuple[tuple[int, int], ...]:
        """Pairs of a kitchen and a gathering that it touches or faces: they are one terrace."""
        kitchens, tables = (
            [i for i, room in enumerate(self.rooms) if room.kind == kind] for kind in ("kitchen", "gathering")
        )
        return tuple((k, t) for k in kitchens for t in tables if self._serves(k, t))

    def _serves(self, kitchen: int, table: int) -> bool:
        one, other = self.rooms[kitchen], self.rooms[table]
        x, y = (_SERVES_FT * step for step in FRONT_VECTORS[one.front])
        swept = one.shape.union(shapely.affinity.translate(one.shape, x, y)).envelope
        faced = swept.intersection(other.shape).area > TOLERANCE_FT
        return faced or self._edge_ft(kitchen, table) > TOLERANCE_FT

    def _edge_ft(self, one: int, other: int) -> float:
        return open_edge_ft(self.site, self.rooms[one].placement, self.rooms[other].placement)

    def index_at(self, points: NDArray[np.float64]) -> NDArray[np.intp]:
        """Number of the room in which each of the points (n, 2) lies, its edge included, or -1."""
        if not self.rooms:
            return np.full(len(points), -1, dtype=np.intp)
        low, high = self.boxes[:, :2] - TOLERANCE_FT, self.boxes[:, 2:] + TOLERANCE_FT
        inside = np.all((points[:, None, :] >= low) & (points[:, None, :] <= high), axis=2)
        for room in (number for number, room in enumerate(self.rooms) if room.placement.is_circle):
            at = self.rooms[room].placement
            inside[:, room] &= np.hypot(*(points - at.centre).T) <= radius_ft(at) + TOLERANCE_FT
        return np.where(np.any(inside, axis=1), np.argmax(inside, axis=1), -1)


@dataclass(frozen=True, slots=True)
class Sill:
    """A door with a known floor: its landing may lie a flush sill below the floor."""

    door: Door
    house: Polygon
    zone: Polygon
    floor_ft: float

    @property
    def flush_ft(self) -> float:
        """Lowest level in hundredths of a foot that is no step below the floor."""
        return ceil((self.floor_ft - step_rules().flush_sill_in / 12) * HUNDREDTH - 1e-6) / HUNDREDTH


def paved_rooms(site: Site, placed: Placed) -> Paved:
    """Paved rooms of a layout; a placed room that the brief does not know is passed over."""
    return Paved(site, ground_of(site), placed.paved, placed)


@lru_cache(maxsize=SITES)
def sills(site: Site) -> tuple[Sill, ...]:
    """Doors of the buildings whose floor is known."""
    return tuple(_sills(site))


def _sills(site: Site) -> Iterator[Sill]:
    zones, houses = dict(site_shapes(site).door_zones), site_shapes(site).buildings
    for building, house in zip(site.buildings, houses, strict=True):
        if building.floor_z_ft is not None:
            yield from (Sill(door, house, zones[door], building.floor_z_ft) for door in building.doors)


@lru_cache(maxsize=SITES)
def built(site: Site) -> BaseGeometry:
    """Ground under buildings, and the landings and steps of their doors."""
    shapes = site_shapes(site)
    solid = shapely.union_all([*shapes.buildings, *(zone for _, zone in shapes.door_zones)])
    shapely.prepare(solid)
    return solid


@lru_cache(maxsize=SITES)
def yard(site: Site) -> Polygon:
    """Ground inside the boundary."""
    boundary = site_shapes(site).boundary
    shapely.prepare(boundary)
    return boundary
