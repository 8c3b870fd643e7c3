"""Rules about steps: how a flight is built, what its foot keeps clear of, and how level the kitchen lies."""

from collections.abc import Iterator, Sequence
from itertools import chain
from math import ceil

from optimizer.catalogue.steps import step_rules
from optimizer.check.case import TOLERANCE_FT, CheckCase
from optimizer.check.finding import Finding
from optimizer.circulation import kitchen_door, way_between
from optimizer.grading import GROUND, Flight, climbed, rooms_along, too_near
from optimizer.layout import PlacedRoom


def steps_clear(case: CheckCase) -> Iterator[Finding]:
    """Flights of one riser or too many without a landing, and those whose foot is too near a seat or a flame."""
    return chain(steps_at_doors(case), steps_on_ways(case))


def steps_at_doors(case: CheckCase) -> Iterator[Finding]:
    """Of the flights at doors, which are known before any way is laid."""
    return _off(case, _at_doors(case))


def steps_on_ways(case: CheckCase) -> Iterator[Finding]:
    """Of the flights on ways and between touching rooms, where somebody walks."""
    at_doors = _at_doors(case)
    return _off(case, [flight for flight in case.derived.grading.flights if flight not in at_doors])


def _at_doors(case: CheckCase) -> tuple[Flight, ...]:
    doors = {door.name for door in case.site.doors}
    return tuple(flight for flight in case.derived.levelled.flights if not doors.isdisjoint(flight.between))


def _off(case: CheckCase, flights: Sequence[Flight]) -> Iterator[Finding]:
    for flight in flights:
        yield from _built(flight)
        near = too_near(case.placed, flight.foot)
        if near is not None and near.short_ft > TOLERANCE_FT:
            ends = " to ".join(flight.between)
            told = f"{case.length(near.away_ft)} from a {near.what} of {near.room}"
            words = f"the foot of the steps from {ends} is {told}, at least {case.length(near.clear_ft)} is asked"
            yield Finding("steps_clear", tuple(dict.fromkeys((near.room, *_named(flight)))), near.short_ft, "ft", words)


def kitchen_level(case: CheckCase) -> Iterator[Finding]:
    """Kitchens too many risers from their door, or with steps on the way to every table; where levels are known."""
    if not case.derived.levelled.is_known:
        return
    most = int(step_rules().kitchen_risers)
    for kitchen in case.placed.of_kind("kitchen"):
        door = kitchen_door(case.scenario, kitchen.room, kitchen.placement)
        risers = _climbed(case, door.name, kitchen.name) if door else None
        if door and risers is not None and risers > most:
            words = f"{risers} risers lie between {door.name} and {kitchen.name}, at most {most} are asked"
            rooms = _on_the_way(case, kitchen.name, door.name)
            yield Finding("kitchen_level", rooms, float(risers - most), "risers", words)
        yield from _stepped_to_table(case, kitchen)


def _stepped_to_table(case: CheckCase, kitchen: PlacedRoom) -> Iterator[Finding]:
    tables = [table.name for table in case.placed.of_kind("gathering")]
    climbs = [(risers, table) for table in tables if (risers := _climbed(case, kitchen.name, table)) is not None]
    risers, table = min(climbs, default=(0, ""))
    if risers:
        words = f"{risers} risers lie between {kitchen.name} and {table}, none is asked"
        yield Finding("kitchen_level", _on_the_way(case, kitchen.name, table), float(risers), "risers", words)


def _climbed(case: CheckCase, start: str, end: str) -> int | None:
    return climbed(case.derived.levelled, case.network, start, end)


def _on_the_way(case: CheckCase, kitchen: str, other: str) -> tuple[str, ...]:
    """The two ends, then the paved rooms between them, whose levels count on the way."""
    stops = case.access.stop(kitchen), case.access.stop(other)
    way = way_between(case.network, stops[0], stops[1]) if stops[0] and stops[1] else None
    between = rooms_along(case.derived.levelled.paved, way) if way else ()
    return tuple(dict.fromkeys((kitchen, other, *between)))


def _built(flight: Flight) -> Iterator[Finding]:
    """A single riser, which one stumbles over, and more than seven without a landing."""
    rules = step_rules()
    in_a_run = ceil(flight.risers / (flight.landings + 1))
    ends = " to ".join(flight.between)
    if flight.risers < rules.least_risers:
        words = f"the steps from {ends} have one riser, at least {rules.least_risers:g} are asked"
        yield Finding("steps_clear", _named(flight), rules.least_risers - flight.risers, "risers", words)
    if in_a_run > rules.risers_to_landing:
        words = f"the steps from {ends} have {in_a_run} risers without a landing, at most {rules.risers_to_landing:g}"
        yield Finding("steps_clear", _named(flight), in_a_run - rules.risers_to_landing, "risers", words)


def _named(flight: Flight) -> tuple[str, ...]:
    return tuple(name for name in flight.between if name != GROUND)
