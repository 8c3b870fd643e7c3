"""Rooms built a little larger than their choice: by how much they may, and what is bought then."""

import pytest

from optimizer.brief import Brief, Choice, Equipment, Guests, RoomWish
from optimizer.catalogue import grown, may_move, most_growth_ft, sized_room, sized_rooms

TABLE = RoomWish("table", "gathering", choices=(Choice("six", 14, 12, 6, 4.0),))
BY_FT = {"left": 1.0, "right": 0.5, "back": 2.0, "front": 0.25}


def test_the_figures_of_the_rule():
    """Layout rule 29: 3 ft a direction, 5 ft to reach a house corner or post."""
    assert most_growth_ft(to_corner=False) == 3
    assert most_growth_ft(to_corner=True) == 5


@pytest.mark.parametrize(("kind", "asked", "share"), [
    ("gathering", None, 0.2), ("gathering", 0.1, 0.1), ("gathering", 0.0, 0.0), ("bed", None, 0.2),
    ("reserve", None, 0.0), ("reserve", 0.2, 0.0), ("storage", None, 0.0),
])  # fmt: skip
def test_the_share_of_its_area(kind, asked, share):
    """A fifth where nothing is said (layout rule 29); never of ground that is held for later, nor of a shed."""
    assert sized_room(RoomWish("room", kind, futures=("hot tub",), grow=asked)).grow == share


def test_furniture_seats_and_worth_stay():
    """Only the floor is larger, and its paving: 15.5 x 14.25 in the place of 14 x 12 ft."""
    (plain,) = sized_room(TABLE).choices
    larger = grown(plain, BY_FT)
    assert (larger.width_ft, larger.depth_ft) == (15.5, 14.25)
    assert (larger.seats, larger.worth, larger.label, larger.sides) == (6, 4.0, "six", plain.sides)
    assert [(i.x_ft, i.y_ft) for i in larger.furniture] == [(i.x_ft + 1, i.y_ft + 2) for i in plain.furniture]
    assert {q.item: q.amount for q in larger.quantities} == {
        **{q.item: q.amount for q in plain.quantities},
        "unit paving": pytest.approx(15.5 * 14.25),
    }


@pytest.mark.parametrize(("kind", "item"), [
    ("kitchen", "unit paving"), ("fire", "unit paving"), ("nook", "plain paving"), ("arrival", "unit paving"),
    ("lawn", "lawn"), ("bed", "planting bed"), ("play", "play surface"),
])  # fmt: skip
def test_every_kind_pays_for_its_ground(kind, item):
    """The added ground is added to what the floor is made of, and to nothing else."""
    plain = sized_room(RoomWish("room", kind)).choices[-1]
    larger = grown(plain, BY_FT)
    more = larger.width_ft * larger.depth_ft - plain.width_ft * plain.depth_ft
    changed = [
        (a.item, b.amount - a.amount) for a, b in zip(plain.quantities, larger.quantities, strict=True) if a != b
    ]
    assert changed == [(item, pytest.approx(more))]


def test_roof_and_screen_are_bought_as_built():
    """A roof covers the whole room, and a screen stands along two sides that meet."""
    wish = RoomWish("table", "gathering", choices=TABLE.choices, cover=True, screen=True)
    (room,) = sized_rooms(Brief(Guests(4, 8), (wish,)))
    dear = room.choices[-1]
    more = {q.item: q.amount for q in grown(dear, BY_FT).quantities}
    assert more["shade structure"] == pytest.approx(15.5 * 14.25)
    assert more["screen panel"] == pytest.approx(15.5 + 14.25)


def test_a_side_with_something_built_along_it_stays():
    """A kitchen's counter, a nook's bed or bench and a fire's seat wall keep their edges; so does the side across a kitchen's leg,
    where a mirrored yard has it. An end of a bed or wall holds nothing.
    """
    equipment = tuple(map(Equipment, ("grill", "sink", "preparation")))
    kitchen = sized_room(RoomWish("cooker", "kitchen", equipment=equipment, bar_seats=3))
    nook, fire = sized_room(RoomWish("nook", "nook", seats=2)), sized_room(RoomWish("fire", "fire", seats=6))
    bench = sized_room(RoomWish("bench", "nook", seats=4))
    found = {
        room.name: [side for side in ("front", "back", "left", "right") if may_move(room, room.choices[-1], side)]
        for room in (kitchen, nook, bench, fire)
    }
    assert found == {
        "cooker": ["front", "back"],
        "nook": ["front", "left", "right"],
        "bench": ["front", "left", "right"],
        "fire": ["front", "left", "right"],
    }
