"""The marks of the placed rooms: floors, and over them furniture and what stands along each side."""

from collections.abc import Collection
from dataclasses import replace

from optimizer.catalogue.sides import side_of_item
from optimizer.drawing.furniture_symbols import symbols
from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.outlines import ring_of
from optimizer.drawing.room_axes import furniture, items_on_plan, side_line
from optimizer.layout import Placed, PlacedRoom

SIDE_INSET_FT = 0.35
LATER_ROLE, LATER_EDGE_ROLE = "later_item", "later_edge"
"""What will stand on a pad, and the edge of the pad itself: dashed outlines."""


def floor_marks(placed: Placed) -> tuple[Mark, ...]:
    """All floors by kind of room; drawn before any fittings, so that no floor hides a neighbour's edge."""
    return tuple(Area(_floor(room), (ring_of(room.placement),)) for room in placed)


def _floor(room: PlacedRoom) -> str:
    """Role of a floor; held ground has one for each use until then, and a pad is that of a later room."""
    if room.is_later:
        return f"room.{room.kind}.later"
    is_lawn = room.kind != "reserve" or room.room.interim == "lawn"
    return f"room.{room.kind}" if is_lawn else f"room.{room.kind}.{room.room.interim}"


def fitting_marks(placed: Placed, *, told: Collection[str] = ()) -> tuple[Mark, ...]:
    """Sides and furniture of all rooms; rooms that are `told` have what may come later drawn by others."""
    marks = ((room.name in told, mark) for room in placed for mark in _fittings(room))
    return tuple(mark for is_told, mark in marks if not is_told or mark.role != "furniture.future")


def later_items(room: PlacedRoom) -> tuple[Mark, ...]:
    """What will stand on a pad."""
    marks = furniture(room.placement, room.choice) if room.choice else ()
    return tuple(replace(mark, role=LATER_ROLE) for mark in marks)


def _fittings(room: PlacedRoom) -> tuple[Mark, ...]:
    choice, placement = room.choice, room.placement
    if choice is None:
        return ()
    if room.is_later:
        return (Area(LATER_EDGE_ROLE, (ring_of(placement),)), *later_items(room))
    # Sides that are built of items are drawn by them, with their thickness.
    drawn = {side.name for item in choice.furniture if (side := side_of_item(room.kind, item))}
    sides = (
        Line(f"side.{what}", side_line(placement, side, inset_ft=SIDE_INSET_FT))
        for side, what in choice.sides
        if what != "open" and what not in drawn
    )
    return (*sides, *furniture(placement, choice), *items_on_plan(placement, choice, symbols(choice)))
