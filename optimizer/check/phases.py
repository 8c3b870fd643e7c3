"""A rule about phases that the brief leaves open: each is worth coming for, reached by machines, of use by itself."""

from collections.abc import Iterator

from optimizer.catalogue import smallest_machine
from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding
from optimizer.derived import later_rooms, reached_before, stages_of
from optimizer.derived.futures.reach import comes_to
from optimizer.layout import PlacedRoom
from optimizer.quantities import figure, hard_to_reach


def phases(case: CheckCase) -> Iterator[Finding]:
    """What is wrong with the phases that open rooms were put into; nothing where none waits for a later one."""
    if any(room.waits for room in case.placed):
        yield from _too_small(case)
        yield from _shut_out(case)
        yield from _cut_off(case)


def _too_small(case: CheckCase) -> Iterator[Finding]:
    """Phases that builders hardly come for. All rooms whose phase is open are to blame: another could join or leave."""
    least = figure("least_phase").value
    open_rooms = tuple(room.name for room in case.placed if any(choice.phase for choice in room.room.choices))
    for phase in sorted({1, *(room.phase for room in case.placed if room.waits)}):
        cost = None if case.price is None else float(case.price(phase))
        if cost is not None and 0 < cost < least:
            words = f"phase {phase} costs {cost:,.2f}, too little to come for: {least:,.0f} is the least"
            yield Finding("phases", open_rooms, least - cost, case.scenario.currency, words)


def _shut_out(case: CheckCase) -> Iterator[Finding]:
    """Heavy rooms that wait behind what is built before them: machines would have to break it up. Where no machine
    comes in any case the work is done by hand, at a price.
    """
    if not case.site.machine_entrances:
        return
    machine, by_hand = smallest_machine(case.site.machine), hard_to_reach(case.derived)
    for room in case.placed:
        if room.waits and room.rules.is_heavy and room.name not in by_hand:
            reach = reached_before(case.derived, room.phase)
            if not comes_to(reach, machine, room):
                words = f"in phase {room.phase} no way for machines is left to the {room.name} past what stands by then"
                off_ft = float(reach.distance(room.shape)) if not reach.is_empty else machine.width_ft
                yield Finding("phases", _with_what_stands(case, room), off_ft, "ft", words)


def _with_what_stands(case: CheckCase, room: PlacedRoom) -> tuple[str, ...]:
    before = (other.name for other in case.placed if other.phase < room.phase and other.rules.built_as)
    return (room.name, *before)


def _cut_off(case: CheckCase) -> Iterator[Finding]:
    """Rooms that stand while everything that people come to them from is still to be built."""
    trips, absent = case.scenario.brief.trips, case.placed.absent
    for phase in stages_of(case.derived):
        later = later_rooms(case.placed, phase)
        for room in (room for room in case.placed if room.name not in later):
            ends = {end for trip in trips if room.name in (trip.start, trip.end) for end in (trip.start, trip.end)}
            others = ends - {room.name} - absent
            if others and others <= later:
                words = f"after phase {phase} nobody comes to the {room.name}: what its trips begin at is built later"
                yield Finding("phases", (room.name, *sorted(others)), len(others), "rooms", words)
