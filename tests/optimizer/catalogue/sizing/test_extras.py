"""Covered and screened copies of choices: offered where they can earn their price, and priced."""

from dataclasses import replace

import pytest

from optimizer.brief import Brief, Choice, Guests, Relation, RoomWish, SunWish
from optimizer.catalogue import book_for, room_price, sized_rooms

SHADE = SunWish("shade", 16, 19, (6,))
TABLE = RoomWish("table", "gathering", choices=(Choice("six", 14, 12, 6, 5.0),))


def labels(*wishes: RoomWish, relations: tuple[Relation, ...] = ()) -> list[list[str]]:
    rooms = sized_rooms(Brief(Guests(4, 12), wishes, relations))
    return [[choice.label for choice in room.choices] for room in rooms]


def test_a_roof_is_offered_where_shade_is_wished_for():
    assert labels(TABLE) == [["six"]]
    assert labels(replace(TABLE, sun=SHADE)) == [["six", "six, covered"]]
    assert labels(replace(TABLE, sun=replace(SHADE, want="sun"))) == [["six"]]


def test_the_brief_has_the_last_word():
    assert labels(replace(TABLE, cover=True)) == [["six", "six, covered"]]
    assert labels(replace(TABLE, sun=SHADE, cover=False)) == [["six"]]


def test_fire_is_never_offered_a_roof():
    (fire,) = labels(RoomWish("fire", "fire", seats=6, sun=SHADE))
    assert not [label for label in fire if "covered" in label]


def test_a_screen_is_offered_where_something_must_not_look_in():
    seen = Relation(("table", "eye"), "out_of_view", wish=2)
    assert labels(TABLE, relations=(seen,)) == [["six", "six, screened"]]
    assert labels(replace(TABLE, screen=False), relations=(seen,)) == [["six"]]
    assert labels(replace(TABLE, sun=SHADE), relations=(seen,)) == [
        ["six", "six, covered", "six, screened", "six, screened, covered"]
    ]


def test_extras_cost_what_the_book_says_and_are_worth_nothing_by_themselves():
    """14 x 12 ft of roof, and 14 + 12 ft of panel."""
    room = sized_rooms(Brief(Guests(4, 12), (replace(TABLE, cover=True, screen=True),)))[0]
    book = book_for("USD")
    plain, covered, screened, both = (room_price(choice, room, book) for choice in room.choices)
    assert covered - plain == 168 * book.of("shade structure").price
    assert screened - plain == 26 * book.of("screen panel").price
    assert both - plain == (covered - plain) + (screened - plain)
    assert len({choice.worth for choice in room.choices}) == 1


@pytest.mark.parametrize(("index", "classes"), [(0, {"paving"}), (1, {"paving", "roof"}), (2, {"paving", "wall"})])
def test_setbacks_go_by_what_the_choice_is_built_as(index, classes):
    room = sized_rooms(Brief(Guests(4, 12), (replace(TABLE, cover=True, screen=True),)))[0]
    assert set(room.built_as(room.choices[index])) == classes
