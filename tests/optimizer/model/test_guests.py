"""What guests need, in the model, the explorer and the check alike."""

from dataclasses import replace

import pytest

from optimizer.brief import Guests
from optimizer.catalogue import Item, asked_by, book_for, held, holds
from optimizer.check import check_layout
from optimizer.instance import build_instance
from optimizer.layout import placed_of
from optimizer.model import build_model, whole_scope
from optimizer.search import board_of, layout_of
from optimizer.search.limits import can_give, keeps_limits
from optimizer.search.solve import Effort, solve
from tests.yards import TWELVE_ON_SOFAS, plain_rooms, plain_yard, seating

SOFAS = seating("table", "gathering", 14, 12, *TWELVE_ON_SOFAS)
BENCH = replace(seating("nook", "nook", 8, 7, Item("bench", 1, 1, 6, 1.5, seats=3)), required=False)


def yard(party):
    plain = plain_yard(ceiling=None)
    return replace(plain, brief=replace(plain.brief, guests=Guests(4, party)))


def instance_of(party, **how):
    return build_instance(yard(party), plain_rooms(SOFAS, BENCH), book_for("USD"), **how)


@pytest.mark.parametrize("party", [12, 16, 20])
def test_the_whole_model_seats_the_party(party):
    """Nine, 12 and 14 seats are asked: the sofas, and for 20 people the bench too. The check agrees."""
    instance = instance_of(party)
    answer = solve(build_model(instance, whole_scope(instance)), Effort(wall_s=60.0))
    assert answer.state is not None
    layout = layout_of(instance, answer.state)
    rooms = {room.name: room for room in plain_rooms(SOFAS, BENCH)}
    there = held(holds(rooms[p.room], c) for p in layout.placements if (c := rooms[p.room].choice(p.choice)))
    assert there.seats >= asked_by(Guests(4, party)).seats
    found = check_layout(yard(party), placed_of(tuple(rooms.values()), layout))
    assert "party_seats" not in {finding.rule for finding in found}
    assert keeps_limits(board_of(instance), answer.state)


def test_a_wish_list_that_is_too_small_asks_nothing():
    """15 seats at most, and 17 are asked for 24: no need, and no finding either."""
    assert instance_of(24).needs == ()
    assert len(instance_of(20).needs) == 2


def test_a_room_still_away_is_trusted_with_its_most():
    """For 20 people: the plain table takes what the bench could not make good; with the bench away it may come yet."""
    instance = instance_of(20)
    board = board_of(instance)
    names = [room.name for room in instance.rooms]
    nowhere = tuple(None for _ in names)
    table, nook = names.index("table"), names.index("nook")
    labels = [instance.context.rooms[table].choices[v.choice].label for v in instance.rooms[table].variants]
    assert {can_give(board, nowhere, table, v) for v, label in enumerate(labels) if label == "laid"} == {True}
    assert {can_give(board, nowhere, table, v) for v, label in enumerate(labels) if label == "plain"} == {False}
    assert not can_give(board, nowhere, nook, None)
    assert not keeps_limits(board, nowhere)
