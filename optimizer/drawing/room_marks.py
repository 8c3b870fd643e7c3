"""The marks of the placed rooms: floor, furniture, and what stands along each side."""

from collections.abc import Mapping

from optimizer.catalogue import SizedRoom
from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.outlines import box_of, ring_of_box
from optimizer.drawing.room_axes import furniture, side_line
from optimizer.layout import Layout, Placement

SIDE_INSET_FT = 0.35


def room_marks(rooms: Mapping[str, SizedRoom], layout: Layout) -> tuple[Mark, ...]:
    """All floors first, so that no floor hides a neighbour's edge; then sides and furniture."""
    floors = tuple(
        Area(f"room.{rooms[placement.room].rules.kind}", (ring_of_box(box_of(placement)),))
        for placement in layout.placements
    )
    fittings = (mark for placement in layout.placements for mark in _fittings(rooms[placement.room], placement))
    return (*floors, *fittings)


def _fittings(room: SizedRoom, placement: Placement) -> tuple[Mark, ...]:
    choice = room.choice(placement.choice)
    if choice is None:
        return ()
    sides = (
        Line(f"side.{what}", side_line(placement, side, inset_ft=SIDE_INSET_FT))
        for side, what in choice.sides
        if what != "open"
    )
    return (*sides, *furniture(placement, choice))
