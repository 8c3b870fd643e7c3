"""The marks of what is bought beside a room: a roof over it, a panel round its sides."""

from collections.abc import Iterator, Mapping

import shapely

from optimizer.catalogue import SizedRoom
from optimizer.check import lookers_of
from optimizer.circulation.screens import bought_screen
from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.outlines import box_of, ring_of_box
from optimizer.layout import Layout
from optimizer.scenario import Scenario


def extra_marks(scenario: Scenario, rooms: Mapping[str, SizedRoom], layout: Layout) -> Iterator[Mark]:
    """Roofs as dashed outlines, panels as lines on the sides that somebody must not look over."""
    lookers = lookers_of(scenario, tuple(rooms.values()), layout)
    for placement in layout.placements:
        choice = rooms[placement.room].choice(placement.choice)
        if choice and choice.cover:
            yield Area("new_roof", (ring_of_box(box_of(placement)),))
        if choice and choice.is_screened:
            for at in lookers.get(placement.room, ()):
                line = shapely.get_coordinates(bought_screen(placement, at).outline)
                if len(line):
                    yield Line("screen", tuple((float(x), float(y)) for x, y in line))
