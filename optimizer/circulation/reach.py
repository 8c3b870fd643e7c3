"""What a clear way joins to the rest, and what it does not."""

from collections.abc import Iterable, Iterator
from typing import Final

import shapely

from optimizer.brief import Brief
from optimizer.circulation.stops import Access, Stop, access_of
from optimizer.layout import Placed
from optimizer.site import Site

_TOUCH_FT: Final = 1e-6


def unreached(site: Site, brief: Brief, placed: Placed) -> tuple[str, ...]:
    """Names of the placed rooms, and of the doors and entrances in trips, that no clear way joins to the rest."""
    return cut_off(site, brief, access_of(site, placed))


def cut_off(site: Site, brief: Brief, access: Access) -> tuple[str, ...]:
    """Names as of `unreached`, for ground and stops that are known already.

    The rest is the part of the ground that holds the first entrance in a trip, else the first door in a trip, else
    the first door of the site, else the largest part.
    """
    in_trips = {name for trip in brief.trips for name in (trip.start, trip.end)}
    of_site = {door.name for door in site.doors} | {entrance.name for entrance in site.entrances}
    asked = [stop for stop in access.stops if stop.name in in_trips or stop.name not in of_site]
    parts = {stop.name: frozenset(_parts_of(stop, access)) for stop in access.stops}
    main = _main_part(access, (parts[name] for name in _leads(site, in_trips)))
    return tuple(stop.name for stop in asked if main not in parts[stop.name])


def _leads(site: Site, in_trips: set[str]) -> Iterator[str]:
    yield from (entrance.name for entrance in site.entrances if entrance.name in in_trips)
    yield from (door.name for door in site.doors if door.name in in_trips)
    yield from (door.name for door in site.doors)


def _main_part(access: Access, leads: Iterable[frozenset[int]]) -> int | None:
    areas = shapely.area(shapely.get_parts(access.ground))
    largest = int(areas.argmax()) if len(areas) else None
    return next((min(parts) for parts in leads if parts), largest)


def _parts_of(stop: Stop, access: Access) -> Iterator[int]:
    for index, part in enumerate(shapely.get_parts(access.ground)):
        if any(part.distance(shapely.Point(gate)) <= _TOUCH_FT for gate in stop.gates):
            yield index
