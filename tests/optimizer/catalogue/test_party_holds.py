"""What choices hold of a party, and what a wish list holds at most."""

from dataclasses import replace

import pytest

from optimizer.brief import Guests
from optimizer.catalogue import Item, holds, most_held, party_is_held, table_is_held
from tests.yards import FOUR_AT_TABLE, TWELVE_ON_SOFAS, plain_rooms, seating, sized

TABLE = seating("table", "gathering", 14, 12, *FOUR_AT_TABLE)
SOFAS = seating("table", "gathering", 14, 12, *TWELVE_ON_SOFAS)


def held_by(room, label="laid"):
    choice = room.choice(label)
    assert choice is not None
    return holds(room, choice)


def test_an_empty_floor_is_stood_on():
    """14 x 12 ft without furniture are 168 sq ft, whole."""
    assert held_by(TABLE, "plain") == (0, 0, pytest.approx(168, abs=0.01))


def test_furniture_and_strips_beside_it_are_not_stood_on():
    """A sofa of 10 x 2 ft, 1 ft from the edges: it and the strip of a foot at its back go, its ends are 3 and 1 ft."""
    room = seating("table", "gathering", 14, 12, Item("sofa", 1, 1, 10, 2, seats=6))
    assert held_by(room) == (0, 6, pytest.approx(14 * 9 + 3 * 3, abs=0.01))


def test_the_space_of_a_chair_is_not_stood_on():
    """A chair of 2 ft in front of a table takes 3 ft from the table's edge."""
    table = Item("table", 0, 0, 14, 4)
    alone, with_chair = (held_by(seating("t", "gathering", 14, 12, table, *chairs)) for chairs in ((), (CHAIR,)))
    assert alone.standing_sqft - with_chair.standing_sqft == pytest.approx(2 * 3, abs=0.01)
    assert (alone.table, with_chair.table) == (0, 1)


CHAIR = Item("chair", 6, 4, 2, 1.5, seats=1)


def test_nobody_stands_in_the_ring_round_a_fire():
    """Four seats round a pit: what lies between them is theirs."""
    seats = tuple(Item("fire seat", x, y, 2, 2, seats=1) for x in (2, 12) for y in (2, 12))
    room = seating("fire", "fire", 16, 16, Item("fire pit", 6, 6, 4, 4), *seats)
    assert held_by(room).standing_sqft == pytest.approx(16 * 16 - 12 * 12, abs=0.01)


@pytest.mark.parametrize("kind", ["kitchen", "lawn", "storage", "reserve"])
def test_nobody_stands_in_kitchens_sheds_and_off_paving(kind):
    assert held_by(sized("room", kind, 14, 12), "plain").standing_sqft == 0


def test_a_later_phase_holds_nobody():
    assert held_by(replace(TABLE, phase=2)) == (0, 0, 0)


@pytest.mark.parametrize(("everyday", "is_held"), [(4, True), (5, False)])
def test_a_table_large_enough_is_on_the_wish_list(everyday, is_held):
    assert table_is_held(plain_rooms(TABLE), Guests(everyday, 12)) is is_held


@pytest.mark.parametrize(("party", "is_held"), [(12, True), (17, True), (18, False)])
def test_the_party_is_held_as_long_as_70_percent_have_seats(party, is_held):
    """12 seats are 70 % of 17; of 18 they are less, with ground enough for all the others."""
    assert party_is_held(plain_rooms(SOFAS), Guests(4, party)) is is_held


def test_the_others_need_ground():
    """12 of 17 sit, five need 40 sq ft: the sofas alone in a room just large enough leave less."""
    tight = seating("table", "gathering", 12, 5, *TWELVE_ON_SOFAS[:1], replace(TWELVE_ON_SOFAS[1], y_ft=3))
    assert not party_is_held((tight,), Guests(4, 17))
    assert party_is_held((tight,), Guests(4, 12))


def test_one_choice_cannot_be_two():
    """A room with four chairs or twelve seats on sofas: with a table for four it seats four and no party of 12."""
    both = replace(SOFAS, choices=(*SOFAS.choices, replace(TABLE.choices[1], label="table")))
    assert most_held((both,), Guests(4, 12))[:2] == (4, 4)
    assert not party_is_held((both,), Guests(4, 12))
    assert party_is_held((both, replace(SOFAS, name="other")), Guests(4, 12))
