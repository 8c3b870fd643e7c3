"""Rules about ways on foot."""

from collections.abc import Iterator

from shapely import LineString, union_all

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
    way_between,
)


def reachable(case: CheckCase) -> Iterator[Finding]:
    """Rooms, and doors and entrances in trips, that no clear way joins to the rest."""
    for name in cut_off(case.site, case.scenario.brief, case.access):
        words = f"no way {case.length(CLEAR_WIDTH_FT)} wide leads to {name}"
        yield Finding("reachable", (name,), CLEAR_WIDTH_FT, "ft", words)


def kitchen_walk(case: CheckCase) -> Iterator[Finding]:
    """Outdoor kitchens too far on foot from their door; of one that cannot be reached `reachable` speaks."""
    for placed in case.placed:
        limit = kitchen_walk_limit_ft(case.scenario, placed.room)
        door = kitchen_door(case.scenario, placed.room, placed.placement)
        length = _way_ft(case, door.name, placed.name) if door and limit is not None else None
        if door and limit is not None and length is not None and length > limit + TOLERANCE_FT:
            words = f"{placed.name} is {case.length(length)} on foot from {door.name}, at most {case.length(limit)}"
            yield Finding("kitchen_walk", (placed.name, door.name), length - limit, "ft", words)


def ways_clear(case: CheckCase) -> Iterator[Finding]:
    """Ways that nothing but a walk through furniture or a chair's space of a third room can make."""
    for way in case.laid.ways:
        if way.between in case.laid.unlaid:
            others = [room for room in case.placed if room.name not in way.between]
            strip = LineString(way.points).buffer(way.width_ft / 2, cap_style="flat")
            crossed = float(strip.intersection(union_all(list(no_path_ground(others)))).area)
            if crossed > TOLERANCE_SQFT:
                words = f"the way from {way.between[0]} to {way.between[1]} leads through furniture or chairs"
                yield Finding("ways_clear", way.between, crossed, "sq ft", words)


def mown(case: CheckCase) -> Iterator[Finding]:
    """Lawns to which the other rooms leave no way for a mower."""
    for name in unmown(case.site, case.placed):
        words = f"no way {case.length(MOWER_FT)} wide is left for a mower from an entrance to {name}"
        yield Finding("mown", (name,), MOWER_FT, "ft", words)


def _way_ft(case: CheckCase, start: str, end: str) -> float | None:
    stops = case.access.stop(start), case.access.stop(end)
    way = way_between(case.network, stops[0], stops[1]) if stops[0] and stops[1] else None
    return way.length_ft if way else None
