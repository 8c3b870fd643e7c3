"""Futures that surely nothing drives in: a question of a few milliseconds, which the judge asks of every layout."""

from collections.abc import Sequence
from functools import cache

from optimizer.brief import Brief
from optimizer.catalogue import Vehicle, vehicle
from optimizer.derived.futures.futures import wanted
from optimizer.derived.futures.obstacles import PhaseOne, obstacles
from optimizer.derived.futures.reach import comes_to, reached_ground
from optimizer.layout import PlacedRoom


def shut_off(built: PhaseOne, brief: Brief) -> tuple[tuple[str, str], ...]:
    """Reserves with those futures to which no open ground as wide as one of their vehicles leads from the street.

    No search for a drive finds one there: the middle of what drives in keeps half its width off all that stands, from
    the street to half its width before the held ground, into which its front reaches. Nothing is said where the site
    names no entrance for machines. Slope and turns are not asked.
    """
    if not built.site.machine_entrances:
        return ()
    reach = cache(lambda one: reached_ground(built.site, [*obstacles(built, one.height_ft)], one))

    def comes(room: PlacedRoom, one: Vehicle) -> bool:
        return comes_to(reach(one), one, room)

    tried = [(room, future, _narrowest_first(built, future.comes)) for room, future in wanted(built, brief)]
    return tuple((room.name, future.name) for room, future, by in tried if not any(comes(room, one) for one in by))


def _narrowest_first(built: PhaseOne, names: Sequence[str]) -> list[Vehicle]:
    return sorted((vehicle(name, built.site.machine) for name in names), key=lambda one: one.width_ft)
