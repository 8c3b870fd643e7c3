"""The marks of what is bought beside a room: a roof over it, a panel round its sides."""

from collections.abc import Iterator

import shapely

from optimizer.check import lookers_of
from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.outlines import box_of, ring_of_box
from optimizer.fields.room_screens import bought_screen
from optimizer.layout import Placed
from optimizer.scenario import Scenario


def extra_marks(scenario: Scenario, placed: Placed) -> Iterator[Mark]:
    """Roofs as dashed outlines, panels as lines on the sides that somebody must not look over."""
    lookers = lookers_of(scenario, placed)
    for room, choice in placed.chosen:
        if choice.cover:
            yield Area("new_roof", (ring_of_box(box_of(room.placement)),))
        if choice.is_screened:
            for at in lookers.get(room.name, ()):
                line = shapely.get_coordinates(bought_screen(room.placement, at).outline)
                if len(line):
                    yield Line("screen", tuple((float(x), float(y)) for x, y in line))
