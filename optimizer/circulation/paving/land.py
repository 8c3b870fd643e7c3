"""Ground on which a paved way may be laid."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Final

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.ground import Ground, obstacles_of_site
from optimizer.circulation.paving.areas import Areas, areas_of
from optimizer.fields import LANDING_FT, SITES, site_shapes
from optimizer.fields.existing_paving import convex_parts, standing_paving
from optimizer.fields.site_walls import barriers
from optimizer.layout import TOLERANCE_FT, Placed, PlacedRoom
from optimizer.site import Site

_SOFT: Final = ("lawn", "play")
_MAIN_FT: Final = 4.0  # what a main way wants


@dataclass(frozen=True, eq=False)
class Land:
    """Free land, and the ground where the centre line of a way of `width_ft` may run on it.

    On `paved` ground nothing need be laid. `lawns` are walked on now and then; main ways are led round them, and so
    off the `verges`, from which a way of `width_ft` would lap over a lawn.
    """

    free: BaseGeometry
    ground: Ground
    width_ft: float
    paved: tuple[Polygon, ...]
    lawns: tuple[Polygon, ...]
    walls: tuple[Polygon, ...] = ()
    there: tuple[Polygon, ...] = ()
    """Convex pieces of the paved ground that was paved before."""

    @cached_property
    def areas(self) -> Areas:
        """Lawns, paved ground and verges."""
        return areas_of((self.lawns, self.paved, self.verges))

    @cached_property
    def walled(self) -> BaseGeometry:
        """Ground of all walls."""
        return shapely.union_all(self.walls)

    @cached_property
    def verges(self) -> tuple[Polygon, ...]:
        """Lawns with the strip round each on which the middle of a way would be too near."""
        wider_ft = self.width_ft / 2 - 2 * TOLERANCE_FT
        return tuple(lawn.buffer(wider_ft, join_style="mitre") for lawn in self.lawns)


def land_of(site: Site, placed: Placed, *, width_ft: float) -> Land:
    """Land of a layout; the landings in front of doors and the paving that stays are paved already.

    A way leads round a landing with steps where there is room before it, and over any other. It crosses no ground that
    is kept for later, though people may; terraces it crosses where their furniture and chairs leave room, as it does
    the deck of a pool outside the water, and it passes a fire outside its seats.
    """
    standing = (room.shape for room in placed if not _lies_open(room))
    there = [*obstacles_of_site(site), *gone_round(site)]
    taken = [*there, *standing, *no_path_ground(placed)]
    free = site_shapes(site).boundary.difference(shapely.union_all(taken))
    ground = free.buffer(TOLERANCE_FT - width_ft / 2, join_style="mitre")
    shapely.prepare(ground)
    # Beside a fire a way lies only in part on its paving: it is laid, and what the fire has of it already is not paid.
    paved = [room.shape for room in placed if room.carries_ways and (room.rules.has_deck or not room.rules.passed)]
    zones = [zone for _, zone in site_shapes(site).door_zones]
    kept = tuple(_there(site, placed, zones))
    lawns = [room.shape for room in placed if room.kind in _SOFT]
    return Land(
        free,
        ground,
        width_ft,
        (*paved, *zones, *kept),
        tuple(lawns),
        barriers(site),
        kept,
    )


def _there(site: Site, placed: Placed, zones: Iterable[Polygon]) -> Iterator[Polygon]:
    """Convex pieces of the paving that stays as it is, beside landings: areas of a group do not lap over each other."""
    return convex_parts(standing_paving(site, placed.shapes).difference(shapely.union_all([*zones])))


def _lies_open(room: PlacedRoom) -> bool:
    return room.carries_ways or (room.rules.walkable and room.kind != "reserve")


@lru_cache(maxsize=SITES)
def gone_round(site: Site) -> tuple[Polygon, ...]:
    """Landings with steps that ways are led round."""
    free = site_shapes(site).boundary.difference(shapely.union_all(obstacles_of_site(site)))
    wider = free.buffer(TOLERANCE_FT, join_style="mitre")
    return tuple(zone for _, zone in site_shapes(site).door_zones if _is_gone_round(wider, zone))


def _is_gone_round(free: BaseGeometry, zone: Polygon) -> bool:
    """Whether a landing has steps, and a way finds room between them and whatever stands before."""
    near_right, far_right, far_left = (np.array(corner) for corner in zone.exterior.coords[1:4])
    out = far_right - near_right
    depth_ft = float(np.hypot(*out))
    if depth_ft <= LANDING_FT + TOLERANCE_FT:
        return False
    step = out / depth_ft * _MAIN_FT
    strip = Polygon([far_left, far_right, far_right + step, far_left + step])
    return bool(free.covers(strip))


def no_path_ground(rooms: Iterable[PlacedRoom]) -> Iterator[Polygon]:
    """Furniture and the chairs' space of the paved rooms that people walk through, or pass."""
    for room in rooms:
        if room.carries_ways:
            yield from room.kept_from_paths
