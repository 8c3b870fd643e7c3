"""Sizes and moves of furniture."""

from optimizer.catalogue import Item
from optimizer.catalogue.sizing.frame import Size, moved, seats_of, sides, turned

BENCH = Item("bench", 1.0, 2.0, 5.0, 1.5, seats=2)


def test_turned_twice_is_as_before() -> None:
    """Exchanging the axes twice changes nothing, once it does, for sizes and for items."""
    assert turned(turned((BENCH,))) == (BENCH,)
    assert turned((BENCH,)) == (Item("bench", 2.0, 1.0, 1.5, 5.0, seats=2),)
    assert Size(3, 4, 5).turned == Size(4, 3, 5)


def test_moved() -> None:
    """Items move along the front and towards it and keep all else."""
    assert moved((BENCH,), right_ft=1, out_ft=2) == (Item("bench", 2.0, 4.0, 5.0, 1.5, seats=2),)


def test_seats_are_counted() -> None:
    """Seats add up over items."""
    assert seats_of((BENCH, BENCH)) == 4


def test_sides_are_open_unless_said() -> None:
    """All four sides are named, open where nothing else is said."""
    assert dict(sides(front="bar")) == {"front": "bar", "back": "open", "left": "open", "right": "open"}
