"""Gatherings: tables, chairs and lounges."""

import pytest

from optimizer.brief import Choice, RoomWish
from optimizer.catalogue import SizedChoice
from optimizer.catalogue.sizing.gathering import GATHERING
from optimizer.catalogue.sizing.sized_rooms import sized_room


def given(width_ft: float, depth_ft: float, seats: int) -> SizedChoice:
    """A gathering of a size that the brief gives."""
    return sized_room(RoomWish("g", "gathering", choices=(Choice("c", width_ft, depth_ft, seats, 1.0),))).choices[0]


@pytest.mark.parametrize(("size", "seats"), [((14, 12), 6), ((16, 13), 8), ((24, 18), 16), ((12, 14), 6)])
def test_usual_sizes_seat_what_they_promise(size: tuple[float, float], seats: int) -> None:
    """The usual sizes (common practice, no source) seat their people, also when turned."""
    assert given(*size, seats).seats == seats


@pytest.mark.parametrize(("seats", "size"), [(6, (14, 12)), (8, (16, 13))])
def test_sizes_by_use_are_the_usual_ones(seats: int, size: tuple[float, float]) -> None:
    """By use, a table for six or eight gets its usual size (common practice, no source)."""
    modest, _, _ = GATHERING.sizes(RoomWish("g", "gathering", seats=seats))
    assert (modest.width_ft, modest.depth_ft) == size


def test_people_can_pass_behind_the_chairs() -> None:
    """Round the table for six in 14 x 12 ft there are 36 in from its edge to the room's (NKBA Guideline 8)."""
    choice = given(14, 12, 6)
    table = next(item for item in choice.furniture if item.role == "table")
    sides = (
        table.x_ft,
        table.y_ft,
        choice.width_ft - table.x_ft - table.width_ft,
        choice.depth_ft - table.y_ft - table.depth_ft,
    )
    assert min(sides) >= 3.0


def test_a_lounge_takes_those_whom_the_table_does_not_seat() -> None:
    """Sixteen people: ten at one table, the others on sofas about a low table."""
    roles = [(item.role, item.seats) for item in given(24, 18, 16).furniture]
    assert sum(seats for role, seats in roles if role == "chair") == 10
    assert sum(seats for role, seats in roles if role == "sofa") == 6
    assert ("low table", 0) in roles


def test_a_room_too_small_says_so_in_its_seats() -> None:
    """In 10 x 10 ft no eight people sit at a table; the room promises fewer."""
    assert 0 < given(10, 10, 8).seats < 8


def test_paving_is_the_area() -> None:
    """The paving of a gathering is its area."""
    amounts = {quantity.item: quantity.amount for quantity in given(14, 12, 6).quantities}
    assert amounts["unit paving"] == 168
