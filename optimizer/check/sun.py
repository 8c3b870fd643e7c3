"""Rule about the hours of sun or shade without which a room is none."""

from collections.abc import Iterator
from typing import Final

from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding

TOLERANCE_H: Final = 0.05
"""Of hours, which are means over samples of a room and of a day."""


def sun_least(case: CheckCase) -> Iterator[Finding]:
    """Rooms that get less sun, or shade, than they must; the roofs of all rooms count."""
    for placed in case.placed:
        sun = placed.room.sun
        if sun is None or sun.least_hours is None:
            continue
        given = sun.given_h(case.derived.sun_h(placed) or 0.0)
        if given < sun.least_hours - TOLERANCE_H:
            words = f"{placed.name} gets {given:.1f} h of {sun.want}, at least {sun.least_hours:g} h is asked"
            yield Finding("sun_least", (placed.name,), sun.least_hours - given, "h", words)
