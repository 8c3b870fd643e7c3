"""Sides, arrangements, and how differently two layouts are arranged."""

import pytest

from optimizer.layout import Layout, Placement, arrangement_of, difference
from optimizer.layout.arrangement import side_of

DIAGONAL_FT = 100.0


def stand(room: str, x_ft: float, y_ft: float, choice: str = "plain") -> Placement:
    """A room of 10 x 10 ft."""
    return Placement(room, choice, x_ft, y_ft, 10, 10, "+y")


TABLE, FIRE = stand("table", 0, 0), stand("fire", 30, 30)
BOTH = Layout((TABLE, FIRE))


@pytest.mark.parametrize(
    ("x_ft", "y_ft", "side"),
    [(20, 30, "left"), (40, 30, "right"), (25, 0, "below"), (25, 60, "above"), (21, 0, "below"), (20, 0, "left")],
)
def test_side_is_left_or_right_unless_the_x_ranges_overlap(x_ft, y_ft, side):
    """Ranges that only touch do not overlap; a diagonal pair is left or right, whatever its heights."""
    assert side_of(stand("table", x_ft, y_ft), FIRE) == side


def test_a_shift_keeps_the_arrangement():
    """A layout moved as a whole has the same arrangement; one with the rooms swapped has another."""
    moved = Layout((stand("table", 7, 3), stand("fire", 37, 33)))
    swapped = Layout((stand("table", 30, 30), stand("fire", 0, 0)))
    assert arrangement_of(moved) == arrangement_of(BOTH)
    assert arrangement_of(swapped) != arrangement_of(BOTH)


@pytest.mark.parametrize(
    ("other", "value"),
    [
        (BOTH, 0.0),
        # One of two rooms takes another choice: a quarter of it, rooms counting half.
        (Layout((TABLE, stand("fire", 30, 30, "large"))), 0.5 * 0.25 / 2),
        # One room moves by 7.5 % of the diagonal, half of what counts in full.
        (Layout((TABLE, stand("fire", 37.5, 30))), 0.5 * 0.75 * 0.5 / 2),
        # One room is left out: it counts in full, and so does the pair.
        (Layout((TABLE,)), 0.5 * 1 / 2 + 0.5),
        # One room stays to the right, but lies below, or neither below nor above: half of the pair's side is another.
        (Layout((TABLE, stand("fire", 30, -30))), 0.5 * 0.75 / 2 + 0.5 * 0.5),
        (Layout((TABLE, stand("fire", 30, 5))), 0.5 * 0.75 / 2 + 0.5 * 0.5),
        # The rooms change places: both moved in full, and the pair's side is another.
        (Layout((stand("table", 30, 30), stand("fire", 0, 0))), 0.5 * 0.75 + 0.5),
    ],
)
def test_difference_is_counted_by_rooms_and_pairs(other, value):
    """The difference is the stated sum, and the same both ways."""
    assert difference(BOTH, other, diagonal_ft=DIAGONAL_FT) == pytest.approx(value)
    assert difference(other, BOTH, diagonal_ft=DIAGONAL_FT) == pytest.approx(value)


def test_two_empty_layouts_do_not_differ():
    """Nothing differs from nothing."""
    assert difference(Layout(()), Layout(()), diagonal_ft=DIAGONAL_FT) == 0
