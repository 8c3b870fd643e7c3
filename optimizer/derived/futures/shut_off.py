"""Futures that surely nothing drives in: a question of a few milliseconds, which the judge asks of every layout."""

from collections.abc import Sequence
from functools import cache

import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Brief
from optimizer.catalogue import Vehicle, vehicle
from optimizer.derived.futures.course import middles_on
from optimizer.derived.futures.futures import wanted
from optimizer.derived.futures.obstacles import PhaseOne, obstacles
from optimizer.derived.futures.street import driven_ground, gates_of, street_of
from optimizer.layout import PlacedRoom


def shut_off(built: PhaseOne, brief: Brief) -> tuple[tuple[str, str], ...]:
    """Reserves with those futures to which no open ground as wide as one of their vehicles leads from the street.

    No search for a drive finds one there: the middle of what drives in keeps half its width off all that stands, from
    the street to half its width before the held ground, into which its front reaches. Nothing is said where the site
    names no entrance for machines. Slope and turns are not asked.
    """
    if not built.site.machine_entrances:
        return ()
    reach = cache(lambda one: _reach(built, one))

    def comes(room: PlacedRoom, one: Vehicle) -> bool:
        return bool(reach(one).distance(room.shape) <= one.width_ft / 2)

    tried = [(room, future, _narrowest_first(built, future.comes)) for room, future in wanted(built, brief)]
    return tuple((room.name, future.name) for room, future, by in tried if not any(comes(room, one) for one in by))


def _narrowest_first(built: PhaseOne, names: Sequence[str]) -> list[Vehicle]:
    return sorted((vehicle(name, built.site.machine) for name in names), key=lambda one: one.width_ft)


def _reach(built: PhaseOne, one: Vehicle) -> BaseGeometry:
    """Ground on which the middle of a vehicle may be and that is one with the street; empty where there is none."""
    middles = middles_on(driven_ground(built.site, [*obstacles(built, one.height_ft)]), one)
    street = shapely.union_all([street_of(gate) for gate in gates_of(built.site)])
    # Past a gate that is too narrow nothing but the street itself is left: it is no ground of the yard.
    return shapely.union_all([part for part in shapely.get_parts(middles) if part.intersects(street)])
