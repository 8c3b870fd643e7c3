"""Rule about the hours of sun or shade without which a room is none."""

from collections.abc import Iterator
from typing import Final

from optimizer.check.blame import blamed
from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding
from optimizer.derived import Derived
from optimizer.layout import Placed, PlacedRoom

TOLERANCE_H: Final = 0.05
"""Of hours, which are means over samples of a room and of a day."""


def sun_least(case: CheckCase) -> Iterator[Finding]:
    """Rooms that get less sun, or shade, than they must; the roofs of all rooms count."""
    for placed in case.placed:
        sun, given = placed.room.sun, _given_h(case.derived, placed)
        if sun and sun.least_hours is not None and given < sun.least_hours - TOLERANCE_H:
            words = f"{placed.name} gets {given:.1f} h of {sun.want}, at least {sun.least_hours:g} h is asked"
            rooms = (placed.name, *_shading(case, placed, sun.least_hours))
            yield Finding("sun_least", rooms, sun.least_hours - given, "h", words)


def _shading(case: CheckCase, room: PlacedRoom, least_h: float) -> tuple[str, ...]:
    """Other rooms without any one of whose roofs it would have its sun."""
    roofed = (other for other, choice in case.placed.chosen if choice.cover and other.name != room.name)

    def has_sun(left: Placed) -> bool:
        return _given_h(Derived(case.scenario, left), room) >= least_h - TOLERANCE_H

    return blamed(case.placed, roofed, has_sun)


def _given_h(derived: Derived, room: PlacedRoom) -> float:
    """Hours of what a room wants; 0 where it wants neither sun nor shade."""
    hours = derived.sun_h(room)
    return 0.0 if hours is None or room.room.sun is None else room.room.sun.given_h(hours)
