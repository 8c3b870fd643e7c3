"""A kitchen that waits: its pad and stubs now, the room itself later."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Brief, Choice, Equipment, Guests, Hold, RoomWish
from optimizer.catalogue import PREPARED, demo_price_book, holds, room_charges, room_price, sized_room, sized_rooms

WISH = RoomWish(
    "cooker", "kitchen", worth=8, bar_seats=3, equipment=(Equipment("grill"), Equipment("sink"), Equipment("ice maker"))
)
ROOM = sized_room(WISH)
BOOK = demo_price_book()


def offered(wish=WISH, *held):
    """Whether the pad is among a room's choices."""
    (room,) = sized_rooms(Brief(Guests(4, 10), (wish,), holds=held))
    return room.choice(PREPARED) is not None


def choice(label):
    """A choice of the kitchen."""
    found = ROOM.choice(label)
    assert found is not None
    return found


def test_the_pad_takes_the_ground_of_the_smallest_whole_kitchen():
    """All that is wished for has its place on it, nobody sits there yet, and its worth is a small share."""
    pad, whole = choice(PREPARED), choice("modest")
    assert pad.is_later
    assert pad.prepares == whole.label
    assert (pad.width_ft, pad.depth_ft, pad.sides) == (whole.width_ft, whole.depth_ft, whole.sides)
    assert [replace(item, seats=0) for item in whole.furniture] == list(pad.furniture)
    assert pad.worth == pytest.approx(0.15 * 8)
    assert whole.seats == 3
    assert (pad.seats, holds(ROOM, pad).seats) == (0, 0)
    assert pad not in ROOM.sizes


def test_paving_and_stubs_now_and_the_rest_later():
    """Paving and a branch of each supply in phase 1; both phases together are what the whole kitchen costs at once."""
    now = {charge.item for charge in room_charges(choice(PREPARED), ROOM) if charge.phase == 1}
    assert now == {"plain paving", "gas branch", "electric branch", "water branch"}
    parts = [room_price(choice(PREPARED), ROOM, BOOK, phase=phase) for phase in (1, 2)]
    assert sum(parts, Decimal(0)) == room_price(choice("modest"), ROOM, BOOK)
    assert 0 < parts[0] < parts[1]


def test_it_is_no_answer_where_the_room_must_be_there():
    """Neither for a required kitchen nor for one held at a place; where the pad itself is held, it is."""
    assert offered()
    assert not offered(replace(WISH, required=True))
    assert not offered(WISH, Hold("cooker", at_ft=(10, 10)))
    assert not offered(WISH, Hold("cooker", choice="modest"))
    assert offered(WISH, Hold("cooker", choice=PREPARED))


def test_it_is_offered_for_nothing_else():
    """Not for choices that the brief gives, for a kitchen that comes later anyway, or for another kind."""
    given = replace(WISH, equipment=(), bar_seats=0, worth=None, choices=(Choice("small", 12, 10, 0, 4),))
    assert not offered(given)
    assert not offered(replace(WISH, phase=2))
    assert not offered(RoomWish("fire", "fire"))


def test_nothing_is_bought_to_a_pad():
    """A roof and a screen wait with the room."""
    (room,) = sized_rooms(Brief(Guests(4, 10), (replace(WISH, cover=True, screen=True),)))
    assert [c.label for c in room.choices if c.is_later] == [PREPARED]
    assert any(c.cover for c in room.choices)
