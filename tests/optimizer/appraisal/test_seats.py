"""Seats and worth of what is placed."""

import pytest

from optimizer.appraisal import people_seated, worth_placed
from optimizer.brief import Choice, RoomWish
from optimizer.catalogue import sized_room
from optimizer.layout import Layout, Placement, placed_of

ROOMS = (
    sized_room(RoomWish("fire", "fire", seats=8, worth=10.0)),
    sized_room(RoomWish("table", "gathering", choices=(Choice("six", 14, 12, 6, 4.0),))),
    sized_room(RoomWish("green", "lawn")),
)


def placed(*names_and_choices: tuple[str, str]) -> Layout:
    """Rooms placed anywhere."""
    return Layout(tuple(Placement(name, choice, 0, 0, 10, 10, "+y") for name, choice in names_and_choices))


def test_seats_and_worth_add_up() -> None:
    """Eight at the fire and six at the table; 0.93 of 10 points and 4."""
    layout = placed(("fire", "comfortable"), ("table", "six"))
    assert people_seated(placed_of(ROOMS, layout)) == 14
    assert worth_placed(placed_of(ROOMS, layout)) == pytest.approx(13.3)


def test_what_the_catalogue_does_not_know_counts_nothing() -> None:
    """A room or choice from elsewhere has neither seats nor worth."""
    layout = placed(("fire", "gigantic"), ("harbour", "six"))
    assert (people_seated(placed_of(ROOMS, layout)), worth_placed(placed_of(ROOMS, layout))) == (0, 0)
