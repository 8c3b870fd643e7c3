"""The paved network of one layout: what must be joined, by which routes, on which legs."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from math import dist
from typing import Final

import shapely
from shapely import LineString

from optimizer.brief import Brief
from optimizer.catalogue import rates
from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.paving.choices import MAIN_COUNT, Demand, MoneyPerFoot, lawn_rate
from optimizer.circulation.paving.graph import graph_of
from optimizer.circulation.paving.land import Land, land_of
from optimizer.circulation.paving.legs import WIDTH_FT, Leg, Pair, legs_of
from optimizer.circulation.paving.routes import Route, routes_of
from optimizer.circulation.paving.terminals import terminals_of
from optimizer.fields import SITES, site_shapes
from optimizer.layout import Placed, Pose, canonical_pose, placed_of
from optimizer.site import Point, Site

_BY_A_DOOR_FT: Final = 10.0  # common practice, no source: a terrace so near a landing is joined to it
_FAR_ROUND: Final = 1.5  # common practice, no source: 1.3 times the straight line is what a main way should not pass
_ROUND_A_ROOM_FT: Final = 10.0
_STEP_FT: Final = 2.0  # a way that laps over a lawn for less is none across it
_DIGITS: Final = 4
"""Decimals of a foot to which ways are laid: coarser than what writing a layout rounds, so that copies tie alike."""
_NOW_AND_THEN: Final = 1.0  # how often a way is taken that no trip names


@dataclass(frozen=True, slots=True)
class Paved:
    """Routes by what they join, for those that could be laid, and the legs that they share."""

    routes: dict[Pair, Route]
    legs: tuple[Leg, ...]
    over_lawns_ft: dict[Pair, float]
    """Length of each main way on lawns or too near them [ft]."""

    def moved(self, move: Callable[[Point], Point]) -> "Paved":
        """The same, every point moved."""
        routes = {pair: Route(tuple(map(move, route.points))) for pair, route in self.routes.items()}
        legs = tuple(replace(leg, points=tuple(map(move, leg.points))) for leg in self.legs)
        return Paved(routes, legs, self.over_lawns_ft)


@dataclass(frozen=True, slots=True)
class _Yard:
    """A layout with all that a network is laid by."""

    site: Site
    brief: Brief
    placed: Placed


def paved_network(site: Site, brief: Brief, placed: Placed, more: Sequence[Pair] = ()) -> Paved:
    """Network of the trips whose ends are both there, and of `more` pairs of names.

    It is laid out for main ways; and for the narrowest too, where the wide ones leave something unjoined or lead far
    round, and then with a narrow way for these trips alone. The one that joins more counts, then the one with less of
    walking, paving, and width that is wanting. All is laid in the yard's canonical pose, so that of equally cheap ways
    a turned or mirrored yard has the same.
    """
    pose, posed_site = _posed(site)
    posed = placed_of(placed.wished, pose.layout(placed.layout))
    return _network(_Yard(posed_site, brief, posed), more).moved(pose.back)


@lru_cache(maxsize=SITES)
def _posed(site: Site) -> tuple[Pose, Site]:
    """The pose in which ways are laid, and the site in it."""
    pose = replace(canonical_pose(site), digits=_DIGITS)
    return pose, pose.site(site)


def _network(yard: _Yard, more: Sequence[Pair]) -> Paved:
    counts = dict(_asked(yard, more))
    wide = _laid(yard, counts, WIDTH_FT["main"])
    served = {pair: route for pair, route in wide.routes.items() if not _is_in_want(wide, pair)}
    if len(served) == len(counts):
        return wide
    narrow = _laid(yard, counts, CLEAR_WIDTH_FT)
    mixed = _paved(yard, counts, _land(yard, CLEAR_WIDTH_FT), {**wide.routes, **narrow.routes, **served})
    return min(wide, narrow, mixed, key=lambda paved: (-len(paved.routes), _cost(yard.brief, paved, counts)))


def _is_in_want(paved: Paved, pair: Pair) -> bool:
    """Whether a narrower way may do better: where this one leads far round, or as a main way over a lawn."""
    return paved.over_lawns_ft.get(pair, 0.0) > _STEP_FT or _leads_far_round(paved.routes[pair])


def _leads_far_round(route: Route) -> bool:
    straight = dist(route.points[0], route.points[-1])
    return _length_ft(route.points) > _FAR_ROUND * straight + _ROUND_A_ROOM_FT


def _cost(brief: Brief, paved: Paved, counts: Mapping[Pair, float]) -> float:
    """Walking and paving in money; width that a leg wants and has not counts as if it had to be paved twice."""
    walked = sum(counts[pair] * _length_ft(route.points) for pair, route in paved.routes.items())
    area = sum((2 * WIDTH_FT[leg.use] - leg.width_ft) * _length_ft(leg.points) for leg in paved.legs)
    per_foot = _per_foot(brief, 1.0)
    crossed = sum(lawn_rate(counts[pair], per_foot) * length for pair, length in paved.over_lawns_ft.items())
    return per_foot.walking * walked + per_foot.paving * area + crossed


def _length_ft(points: Sequence[Point]) -> float:
    return sum(dist(a, b) for a, b in pairwise(points))


def _asked(yard: _Yard, more: Sequence[Pair]) -> Iterator[tuple[Pair, float]]:
    unwalked = yard.placed.unwalked
    trips = [trip for trip in yard.brief.trips if unwalked.isdisjoint((trip.start, trip.end))]
    named = {name for trip in trips for name in (trip.start, trip.end)}
    for trip in trips:
        yield (trip.start, trip.end), trip.count
    for pair in more:
        yield pair, _NOW_AND_THEN
    terraces = [room for room in yard.placed.paved if room.rules.walkable]
    for door, zone in site_shapes(yard.site).door_zones:
        near = min(terraces, key=lambda room: zone.distance(room.shape), default=None)
        if near is not None and door.name not in named and zone.distance(near.shape) <= _BY_A_DOOR_FT:
            yield (door.name, near.name), _NOW_AND_THEN


def _laid(yard: _Yard, counts: Mapping[Pair, float], width_ft: float) -> Paved:
    terminals = terminals_of(yard.site, yard.placed)
    number = {terminal.name: index for index, terminal in enumerate(terminals)}
    land = _land(yard, width_ft)
    demands = [Demand(number[start], number[end], count) for (start, end), count in counts.items()]
    found = routes_of(graph_of(land, terminals, _partners(demands)), demands, _per_foot(yard.brief, width_ft))
    return _paved(yard, counts, land, {pair: route for pair, route in zip(counts, found, strict=True) if route})


def _land(yard: _Yard, width_ft: float) -> Land:
    return land_of(yard.site, yard.placed, width_ft=width_ft)


def _paved(yard: _Yard, counts: Mapping[Pair, float], land: Land, routes: dict[Pair, Route]) -> Paved:
    entrances = {entrance.name for entrance in yard.site.entrances if "guests" in entrance.used_by}
    arrivals = {pair for pair, count in counts.items() if count > _NOW_AND_THEN and not entrances.isdisjoint(pair)}
    legs = legs_of(land, {pair: route.outside for pair, route in routes.items()}, counts, arrivals)
    return Paved(routes, legs, dict(_over_lawns(land, routes, counts)))


def _over_lawns(land: Land, routes: Mapping[Pair, Route], counts: Mapping[Pair, float]) -> Iterator[tuple[Pair, float]]:
    verges = shapely.union_all([*land.verges]).difference(shapely.union_all(land.paved))
    for pair, route in routes.items():
        if counts[pair] >= MAIN_COUNT and len(route.outside) > 1:
            yield pair, float(LineString(route.outside).intersection(verges).length)


def _partners(demands: Sequence[Demand]) -> dict[int, set[int]]:
    """By a terminal's number, those that trips lead to or from."""
    found: dict[int, set[int]] = {}
    for demand in demands:
        found.setdefault(demand.start, set()).add(demand.end)
        found.setdefault(demand.end, set()).add(demand.start)
    return found


def _per_foot(brief: Brief, width_ft: float) -> MoneyPerFoot:
    return MoneyPerFoot(
        walking=rates().walking * max(brief.weights.walking, 0.01),
        paving=rates().paving * brief.weights.paving * width_ft,
    )
