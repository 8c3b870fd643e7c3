"""Rules about ways on foot."""

from collections.abc import Iterator, Sequence
from functools import partial

from shapely import LineString, Point, Polygon, union_all

from optimizer.brief import Brief
from optimizer.check.blame import blamed, standing_between
from optimizer.check.case import TOLERANCE_FT, TOLERANCE_SQFT, CheckCase
from optimizer.check.finding import Finding
from optimizer.circulation import (
    CLEAR_WIDTH_FT,
    MOWER_FT,
    cut_off,
    kitchen_door,
    kitchen_walk_limit_ft,
    no_path_ground,
    unmown,
    unreached,
    way_between,
)
from optimizer.derived import Derived
from optimizer.layout import Placed, PlacedRoom
from optimizer.site import Site


def reachable(case: CheckCase) -> Iterator[Finding]:
    """Rooms, and doors and entrances in trips, that no clear way joins to the rest."""
    site, brief = case.site, case.scenario.brief
    for name in cut_off(site, brief, case.access):
        words = f"no way {case.length(CLEAR_WIDTH_FT)} wide leads to {name}"
        standing = (room for room in case.placed if not room.rules.walkable and room.name != name)
        rooms = blamed(case.placed, standing, partial(_is_reached, site, brief, name))
        yield Finding("reachable", (name, *rooms), CLEAR_WIDTH_FT, "ft", words)


def kitchen_walk(case: CheckCase) -> Iterator[Finding]:
    """Outdoor kitchens too far on foot from their door; of one that cannot be reached `reachable` speaks."""
    for placed in case.placed:
        limit = kitchen_walk_limit_ft(case.scenario, placed.room)
        door = kitchen_door(case.scenario, placed.room, placed.placement)
        length = _way_ft(case, door.name, placed.name) if door and limit is not None else None
        if door and limit is not None and length is not None and length > limit + TOLERANCE_FT:
            words = f"{placed.name} is {case.length(length)} on foot from {door.name}, at most {case.length(limit)}"
            others = (room for room in case.placed if not room.rules.walkable and room.name != placed.name)
            between = standing_between(others, (Point(door.at), placed.shape), limit)
            rooms = blamed(case.placed, between, partial(_is_near, case, door.name, placed.name, limit))
            yield Finding("kitchen_walk", (placed.name, door.name, *rooms), length - limit, "ft", words)


def ways_clear(case: CheckCase) -> Iterator[Finding]:
    """Ways that nothing but a walk through furniture or a chair's space of a third room can make."""
    for way in case.laid.ways:
        if way.between in case.laid.unlaid:
            others = [room for room in case.placed if room.name not in way.between]
            strip = LineString(way.points).buffer(way.width_ft / 2, cap_style="flat")
            crossed = {room.name: _crossed_sqft(strip, [room]) for room in others}
            if (area := _crossed_sqft(strip, others)) > TOLERANCE_SQFT:
                words = f"the way from {way.between[0]} to {way.between[1]} leads through furniture or chairs"
                rooms = (name for name, part in crossed.items() if part > 0)
                yield Finding("ways_clear", (*way.between, *rooms), area, "sq ft", words)


def mown(case: CheckCase) -> Iterator[Finding]:
    """Lawns to which the other rooms leave no way for a mower."""
    for name in unmown(case.site, case.placed):
        words = f"no way {case.length(MOWER_FT)} wide is left for a mower from an entrance to {name}"
        others = (room for room in case.placed if room.name != name)
        rooms = blamed(case.placed, others, partial(_is_mown, case.site, name))
        yield Finding("mown", (name, *rooms), MOWER_FT, "ft", words)


def _is_reached(site: Site, brief: Brief, name: str, placed: Placed) -> bool:
    return name not in unreached(site, brief, placed)


def _is_near(case: CheckCase, door: str, kitchen: str, limit_ft: float, placed: Placed) -> bool:
    """Whether the kitchen is near enough to its door where only these rooms stand in the way."""
    length = _way_ft(CheckCase(Derived(case.scenario, placed)), door, kitchen)
    return length is not None and length <= limit_ft + TOLERANCE_FT


def _is_mown(site: Site, name: str, placed: Placed) -> bool:
    return name not in unmown(site, placed)


def _crossed_sqft(strip: Polygon, rooms: Sequence[PlacedRoom]) -> float:
    return float(strip.intersection(union_all(list(no_path_ground(rooms)))).area)


def _way_ft(case: CheckCase, start: str, end: str) -> float | None:
    stops = case.access.stop(start), case.access.stop(end)
    way = way_between(case.network, stops[0], stops[1]) if stops[0] and stops[1] else None
    return way.length_ft if way else None
