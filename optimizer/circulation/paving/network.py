"""The paved network of one layout: what must be joined, by which routes, on which legs."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from shapely import Polygon

from optimizer.brief import Brief
from optimizer.catalogue import SizedRoom, rates
from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.paving.graph import graph_of
from optimizer.circulation.paving.land import land_of
from optimizer.circulation.paving.legs import WIDTH_FT, Leg, Pair, legs_of
from optimizer.circulation.paving.routes import Demand, Rates, Route, routes_of
from optimizer.circulation.paving.terminals import terminals_of
from optimizer.circulation.shapes import rectangle
from optimizer.fields import door_zone
from optimizer.layout import Layout
from optimizer.site import Door, Site

_BY_A_DOOR_FT: Final = 10.0  # common practice, no source: a terrace so near a landing is joined to it
_NOW_AND_THEN: Final = 1.0  # how often a way is taken that no trip names


@dataclass(frozen=True, slots=True)
class Paved:
    """Routes by what they join, for those that could be laid, and the legs that they share."""

    routes: dict[Pair, Route]
    legs: tuple[Leg, ...]


def paved_network(
    site: Site, brief: Brief, rooms: Sequence[SizedRoom], layout: Layout, more: Sequence[Pair] = ()
) -> Paved:
    """Network of the trips whose ends are both there, and of `more` pairs of names.

    It is laid out for main ways, and for the narrowest where that leaves something unjoined.
    """
    zones = [(door, door_zone(site, building, door)) for building in site.buildings for door in building.doors]
    counts = dict(_asked(brief, rooms, layout, zones, more))
    wide = _laid(site, brief, rooms, layout, zones, counts, WIDTH_FT["main"])
    if len(wide.routes) == len(counts):
        return wide
    narrow = _laid(site, brief, rooms, layout, zones, counts, CLEAR_WIDTH_FT)
    return narrow if len(narrow.routes) > len(wide.routes) else wide


def _asked(
    brief: Brief,
    rooms: Sequence[SizedRoom],
    layout: Layout,
    zones: Sequence[tuple[Door, Polygon]],
    more: Sequence[Pair],
) -> Iterator[tuple[Pair, float]]:
    wished = {room.name: room for room in rooms}
    placed = {placement.room: placement for placement in layout.placements if placement.room in wished}
    trips = [t for t in brief.trips if all(name in placed or name not in wished for name in (t.start, t.end))]
    named = {name for trip in trips for name in (trip.start, trip.end)}
    for trip in trips:
        yield (trip.start, trip.end), trip.count
    for pair in more:
        yield pair, _NOW_AND_THEN
    for door, zone in zones:
        terraces = [p for p in placed.values() if wished[p.room].rules.paved and wished[p.room].rules.walkable]
        near = min(terraces, key=lambda place: zone.distance(rectangle(place)), default=None)
        if near is not None and door.name not in named and zone.distance(rectangle(near)) <= _BY_A_DOOR_FT:
            yield (door.name, near.room), _NOW_AND_THEN


def _laid(
    site: Site,
    brief: Brief,
    rooms: Sequence[SizedRoom],
    layout: Layout,
    zones: Sequence[tuple[Door, Polygon]],
    counts: dict[Pair, float],
    width_ft: float,
) -> Paved:
    terminals = terminals_of(site, rooms, layout, zones)
    number = {terminal.name: index for index, terminal in enumerate(terminals)}
    land = land_of(site, rooms, layout, [zone for _, zone in zones], width_ft=width_ft)
    demands = [Demand(number[start], number[end], count) for (start, end), count in counts.items()]
    found = routes_of(graph_of(land, terminals), demands, _rates(brief, width_ft))
    routes = {pair: route for pair, route in zip(counts, found, strict=True) if route is not None}
    entrances = {entrance.name for entrance in site.entrances if "guests" in entrance.used_by}
    arrivals = {pair for pair, count in counts.items() if count > _NOW_AND_THEN and not entrances.isdisjoint(pair)}
    legs = legs_of(land, {pair: route.outside for pair, route in routes.items()}, counts, arrivals)
    return Paved(routes, legs)


def _rates(brief: Brief, width_ft: float) -> Rates:
    return Rates(
        walking=rates().walking * max(brief.weights.walking, 0.01),
        paving=rates().paving * brief.weights.paving * width_ft,
    )
