"""The marks of what is said of a room beside its furniture: a roof over it, a panel round its sides, and holds."""

from collections.abc import Iterator
from typing import Final

import shapely

from optimizer.check import lookers_of
from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.outlines import box_of, ring_of_box
from optimizer.fields.room_screens import bought_screen
from optimizer.layout import Placed
from optimizer.scenario import Scenario

HELD_CORNER_FT: Final = 1.5


def extra_marks(scenario: Scenario, placed: Placed) -> Iterator[Mark]:
    """Roofs as dashed outlines, panels on the sides that somebody must not look over, corners of held rooms."""
    lookers = lookers_of(scenario, placed)
    for room, choice in placed.chosen:
        if choice.cover:
            yield Area("new_roof", (ring_of_box(box_of(room.placement)),))
        if choice.is_screened:
            for at in lookers.get(room.name, ()):
                line = shapely.get_coordinates(bought_screen(room.placement, at).outline)
                if len(line):
                    yield Line("screen", tuple((float(x), float(y)) for x, y in line))
    yield from _held(scenario, placed)


def _held(scenario: Scenario, placed: Placed) -> Iterator[Area]:
    """A small corner on every room of which a person holds something."""
    held = {hold.room for hold in scenario.brief.holds}
    for room in placed:
        if room.name in held:
            x, y = room.placement.x_ft, room.placement.y_ft
            yield Area("held", (((x, y), (x + HELD_CORNER_FT, y), (x, y + HELD_CORNER_FT)),))
