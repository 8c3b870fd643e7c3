"""All ways of a layout: one for each trip, and a path of its own for each room that would float."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Brief
from optimizer.catalogue import SizedRoom
from optimizer.circulation.network import Network, network_of
from optimizer.circulation.reach import cut_off
from optimizer.circulation.shapes import outline, rectangle, shared_edge_ft
from optimizer.circulation.stops import Stop, access_of
from optimizer.circulation.way import Leg, Way, branch_to, way_between
from optimizer.layout import Layout, Placement
from optimizer.layout.arrangement import TOLERANCE_FT
from optimizer.site import Site

_FLOATING_FT: Final = 4.0  # common practice, no source: with less shared edge a room needs a path


@dataclass(frozen=True, slots=True)
class Ways:
    """Ways of the trips whose ends are both there, paths of rooms that no trip reaches, and names no way joins."""

    trips: tuple[Way, ...]
    own_paths: tuple[Way, ...]
    unreached: tuple[str, ...]
    network: Network
    """Shortest ways between all stops, on which these were found."""

    @property
    def ways(self) -> tuple[Way, ...]:
        """All ways, trips first."""
        return self.trips + self.own_paths

    @property
    def legs(self) -> tuple[Leg, ...]:
        """Paved stretches that the ways run on."""
        return tuple(Leg(way.points, way.width_ft, "main", (way.between,)) for way in self.ways)


def ways(site: Site, brief: Brief, rooms: Sequence[SizedRoom], layout: Layout) -> Ways:
    """Ways of a layout. What cannot be reached has no way, and its name is in `unreached`."""
    network = network_of(access_of(site, rooms, layout))
    trips = tuple(_of_trips(network, brief))
    own_paths = tuple(_own_paths(network, site, trips, _floating(rooms, layout, trips)))
    return Ways(trips, own_paths, cut_off(site, brief, network.access), network)


def way_polygon(site: Site, layout: Layout, ways: Sequence[Way]) -> BaseGeometry:
    """Ground that ways take outside rooms and buildings [ft], inside the boundary."""
    strips = [
        LineString(way.points).buffer(way.width_ft / 2, cap_style="flat", join_style="mitre")
        for way in ways
        if len(way.points) > 1
    ]
    taken = [rectangle(placement) for placement in layout.placements]
    taken += [outline(building.outline) for building in site.buildings]
    inside = shapely.union_all(strips).intersection(outline(site.boundary))
    return inside.difference(shapely.union_all(taken))


def _of_trips(network: Network, brief: Brief) -> Iterator[Way]:
    for trip in brief.trips:
        start, end = network.access.stop(trip.start), network.access.stop(trip.end)
        way = way_between(network, start, end) if start and end else None
        if way is not None:
            yield way


def _floating(rooms: Sequence[SizedRoom], layout: Layout, trips: Sequence[Way]) -> tuple[str, ...]:
    """Placed rooms that no trip reaches and that do not lean on another paved room."""
    reached = {name for way in trips for name in way.between}
    paved = {room.name for room in rooms if room.rules.paved}
    return tuple(p.room for p in layout.placements if p.room not in reached and not _leans(p, layout, paved))


def _leans(placement: Placement, layout: Layout, paved: set[str]) -> bool:
    return any(
        shared_edge_ft(placement, other) >= _FLOATING_FT - TOLERANCE_FT
        for other in layout.placements
        if other.room != placement.room and other.room in paved
    )


def _own_paths(network: Network, site: Site, trips: Sequence[Way], floating: Sequence[str]) -> Iterator[Way]:
    openings = {door.name for door in site.doors} | {entrance.name for entrance in site.entrances}
    ends = [stop for stop in network.access.stops if stop.name in openings]
    trunks = [Stop(way.between[0], way.points[0], (), 0.0, LineString(way.points)) for way in trips]
    for room in (stop for stop in network.access.stops if stop.name in floating):
        found = [way_between(network, room, end) for end in ends] + [branch_to(network, room, end) for end in trunks]
        path = min((way for way in found if way is not None), key=lambda way: way.length_ft, default=None)
        if path is not None:
            yield path
