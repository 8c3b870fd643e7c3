"""Jogs of the paved outline: short steps to one side and on again, which cost cuts and read as an accident."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.derived import Derived
from optimizer.fields import SITES, site_shapes
from optimizer.fields.existing_paving import standing_paving
from optimizer.grading import Flight
from optimizer.layout import TOLERANCE_FT
from optimizer.planting.strips import round_trees
from optimizer.site import Site

JOG_FT: Final = 4.0
"""A longer step to the side is a figure of its own; layout rule 28, common practice, no source."""
_LEAST_BEND: Final = 0.34  # sine of 20 degrees: a slighter turn is no corner
_GRID_FT: Final = 0.01
_SAME_FT: Final = 0.05  # corners this near to a straight edge lie on it
_AT_FT: Final = 0.1

Coordinates = NDArray[np.float64]


def paved_jogs(derived: Derived) -> int:
    """Jogs under 4 ft in the outline of terraces, ways, landings and old paving that stays as one ground.

    Those with a corner at a house, a landing, a flight of steps or a kept tree have their reason and do not count.
    """
    site = derived.site
    landings = [zone for _, zone in site_shapes(site).door_zones]
    rooms = [room.shape for room in derived.placed.paved]
    there = standing_paving(site, derived.placed.shapes)
    ground = shapely.union_all([derived.paths, *rooms, *landings, there], grid_size=_GRID_FT).simplify(_SAME_FT)
    reasons = [_fixed(site), *(_of_flight(flight) for flight in derived.grading.flights)]
    ends = np.concatenate([np.empty((0, 2, 2)), *(_jogs(ring) for ring in _rings(ground))])
    corners = shapely.points(ends)
    near = shapely.distance(corners[..., None], np.array(reasons, dtype=object)) <= _AT_FT
    return int((~near.any(axis=(1, 2))).sum())


@lru_cache(maxsize=SITES)
def _fixed(site: Site) -> BaseGeometry:
    """Houses, landings, and the mulch round trees."""
    shapes = site_shapes(site)
    return shapely.union_all([*shapes.buildings, *(zone for _, zone in shapes.door_zones), round_trees(site)])


def _of_flight(flight: Flight) -> Polygon:
    """Ground of a flight's treads, from its foot to its top."""
    top, foot = np.array(flight.at), np.array(flight.foot.at)
    aside = np.array([-flight.going[1], flight.going[0]]) * flight.width_ft / 2
    return Polygon([foot - aside, top - aside, top + aside, foot + aside])


def _rings(ground: BaseGeometry) -> Iterator[Coordinates]:
    """Corners of every outline, inner ones too, each ring counter-clockwise round its ground and not closed."""
    for part in shapely.get_parts(shapely.orient_polygons(ground)):
        for ring in shapely.get_rings(part):
            yield _without_first(shapely.get_coordinates(ring)[:-1])


def _without_first(corners: Coordinates) -> Coordinates:
    """Corners without the first where it lies on a straight edge, which nothing simplifies."""
    before, after = corners[0] - corners[-1], corners[1] - corners[0]
    return corners[1:] if abs(before[0] * after[1] - before[1] * after[0]) < _SAME_FT * np.hypot(*before) else corners


def _jogs(corners: Coordinates) -> Coordinates:
    """Short edges of a ring with a corner to one side at one end and to the other at the other, shape (n, 2, 2)."""
    step = np.roll(corners, -1, axis=0) - corners
    length = np.hypot(step[:, 0], step[:, 1])
    along = step / length[:, None]
    before = np.roll(along, 1, axis=0)
    turn = before[:, 0] * along[:, 1] - before[:, 1] * along[:, 0]
    after = np.roll(turn, -1)
    is_step = (turn * after < 0) & (np.minimum(np.abs(turn), np.abs(after)) > _LEAST_BEND)
    is_jog = is_step & (length < JOG_FT - TOLERANCE_FT)
    return np.stack([corners, np.roll(corners, -1, axis=0)], axis=1)[is_jog]
