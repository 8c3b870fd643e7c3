"""Details within furniture."""

from math import cos, hypot, radians, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, affinity, box

from optimizer.brief import RoomWish
from optimizer.catalogue import Item, SizedChoice, sized_room
from optimizer.drawing.furniture_symbols import symbols
from optimizer.drawing.room_marks import fitting_marks
from optimizer.layout import Layout, placed_of
from tests.yards import stand


def holding(*items: Item) -> SizedChoice:
    """A choice with this furniture."""
    return SizedChoice("c", 12, 10, 0, 1.0, furniture=items)


def middle(item: Item) -> tuple[float, float]:
    """Middle of an item."""
    return (item.x_ft + item.width_ft / 2, item.y_ft + item.depth_ft / 2)


def ground(item: Item) -> Polygon:
    """Ground of an item in the room's axes."""
    if item.shape == "circle":
        return Point(middle(item)).buffer(item.width_ft / 2)
    flat = box(item.x_ft, item.y_ft, item.x_ft + item.width_ft, item.y_ft + item.depth_ft)
    return affinity.rotate(flat, item.turn_deg)


@settings(max_examples=60, deadline=None)
@given(kind=st.sampled_from(("gathering", "kitchen", "fire", "nook")), seats=st.integers(1, 20))
def test_details_lie_within_what_they_are_part_of(kind, seats) -> None:
    """No line leaves its piece of furniture, however it is turned."""
    for choice in sized_room(RoomWish("r", kind, seats=seats, bar_seats=min(seats, 8))).choices:
        pieces = [ground(item).buffer(0.05) for item in choice.furniture]
        details = symbols(choice)
        assert details
        assert not [d for d in details if not any(piece.covers(ground(d)) for piece in pieces)]
        assert sum(detail.seats for detail in details) == 0


@pytest.mark.parametrize(("x_ft", "y_ft", "back"), [(5, 0, (5.5, 0.14)), (5, 8, (5.5, 8.86)), (0, 5, (0.14, 5.5))])
def test_a_chair_has_its_back_away_from_the_table(x_ft, y_ft, back) -> None:
    """Below, above and beside a table."""
    (detail,) = symbols(holding(Item("table", 3, 3, 5, 4), Item("chair", x_ft, y_ft, 1, 1, seats=1)))
    assert middle(detail) == pytest.approx(back)


@pytest.mark.parametrize("turn", [0.0001, 40.0, 90.0, 215.0])
def test_a_seat_at_a_fire_has_its_back_outwards(turn) -> None:
    """The back lies on the ray from the fire through the seat, beyond its middle."""
    out = (cos(radians(turn)), sin(radians(turn)))
    seat = Item("fire seat", 5 + 4 * out[0], 4 + 4 * out[1], 2, 2, seats=1, turn_deg=turn)
    *_, detail = symbols(holding(Item("fire pit", 4, 3, 4, 4, "circle"), seat))
    away = (middle(detail)[0] - middle(seat)[0], middle(detail)[1] - middle(seat)[1])
    assert away[0] * out[0] + away[1] * out[1] == pytest.approx(hypot(*away))
    assert hypot(*away) == pytest.approx(1 - 0.35 / 2)


def test_chairs_of_a_nook() -> None:
    """Opposite a bench they look at it, else over the front; one above another they look to the right."""
    opposite = symbols(holding(Item("bench", 0, 0, 5, 1.5, seats=2), Item("lounge chair", 1, 4, 2, 2, seats=1)))[-1]
    assert middle(opposite)[1] > 5
    row = [Item("lounge chair", x, 3, 2, 2, seats=1) for x in (1, 5)]
    assert {middle(detail)[1] < 4 for detail in symbols(holding(*row))} == {True}
    column = [Item("lounge chair", 3, y, 2, 2, seats=1) for y in (1, 5)]
    assert {middle(detail)[0] < 4 for detail in symbols(holding(*column))} == {True}


def test_sides_are_drawn_once() -> None:
    """What is built along a side is drawn as it stands, not as a line on top; a shed's back is a line."""
    rooms = {kind: sized_room(RoomWish(kind, kind, seats=4, bar_seats=2)) for kind in ("nook", "fire", "kitchen")}
    for name, room in rooms.items():
        choice = room.choices[-1]
        place = stand(name, 0, 0, choice.width_ft, choice.depth_ft, choice=choice.label)
        roles = [mark.role for mark in fitting_marks(placed_of((room,), Layout((place,))))]
        assert not [role for role in roles if role.startswith("side.")]
    shed = sized_room(RoomWish("shed", "storage"))
    marks = fitting_marks(placed_of((shed,), Layout((stand("shed", 0, 0, 8, 6, choice="modest"),))))
    assert [mark.role for mark in marks] == ["side.back", "furniture.shelf"]
