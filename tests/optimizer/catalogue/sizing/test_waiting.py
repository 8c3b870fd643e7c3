"""A room whose phase is open: a choice of its own for each later phase that it may wait for."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Brief, Budget, Equipment, Guests, Hold, RoomWish
from optimizer.catalogue import comes_later, demo_price_book, holds, phase_in, room_charges, room_price, sized_rooms
from tests.small_yard import changed, problems

WISH = RoomWish("cooker", "kitchen", worth=8, bar_seats=3, equipment=(Equipment("grill"), Equipment("sink")))
OPEN = replace(WISH, may_wait=True)
BOOK = demo_price_book()
NOOK = "{name: chairs, kind: nook, seats: 2, worth: 3"


def room_of(wish, *held, phases=()):
    """The room as a brief with these holds, and these later phases with a ceiling, sizes it."""
    budget = Budget(phases=tuple((phase, Decimal(40000)) for phase in phases))
    (room,) = sized_rooms(Brief(Guests(4, 10), (wish,), holds=held, budget=budget))
    return room


def waiting(room):
    """Labels of the choices that wait."""
    return {choice.label for choice in room.choices if choice.phase is not None}


def test_every_size_may_wait_for_every_later_phase():
    """For the second phase, and for each with a ceiling; half of the worth, no seat, the same ground."""
    sizes = {choice.label for choice in room_of(WISH).sizes}
    assert waiting(room_of(WISH)) == set()
    assert waiting(room_of(OPEN)) == {f"{size}, in phase 2" for size in sizes}
    assert waiting(room_of(OPEN, phases=(3,))) == {f"{size}, in phase {n}" for size in sizes for n in (2, 3)}
    room = room_of(OPEN)
    later, whole = room.choice("modest, in phase 2"), room.choice("modest")
    assert (later.is_later, later.is_pad, later.prepares) == (True, False, "modest")
    assert (later.width_ft, later.depth_ft, later.worth) == (whole.width_ft, whole.depth_ft, whole.worth / 2)
    assert whole.seats == 3
    assert (later.seats, holds(room, later).seats, holds(room, later).standing_sqft) == (0, 0, 0)
    assert later not in room.sizes
    terrace = room_of(RoomWish("table", "gathering", seats=6, may_wait=True))
    stands = {choice.label: holds(terrace, choice).standing_sqft for choice in terrace.choices}
    assert stands["modest"] > stands["modest, in phase 2"] == 0


def test_all_its_work_is_done_then_but_for_sleeves():
    """Phase 2 costs what the whole costs at once; phase 1 has sleeves for its supplies, and none where it has none."""
    room = room_of(OPEN)
    later, whole = room.choice("modest, in phase 2"), room.choice("modest")
    assert room_price(later, room, BOOK, phase=2) == room_price(whole, room, BOOK)
    assert [charge.item for charge in room_charges(later, room) if charge.phase == 1] == ["reserve kept clear"]
    nook = room_of(RoomWish("chairs", "nook", may_wait=True))
    assert all(room_price(choice, nook, BOOK) == 0 for choice in nook.choices if choice.phase)


def test_what_must_be_there_does_not_wait():
    """Neither a required room nor one that is held at a place; where the waiting itself is held, it is kept."""
    assert not waiting(room_of(replace(OPEN, required=True)))
    assert not waiting(room_of(OPEN, Hold("cooker", at_ft=(10, 10))))
    assert waiting(room_of(OPEN, Hold("cooker", choice="modest, in phase 2"))) == {"modest, in phase 2"}


def test_labels_tell_the_phase():
    """Of a choice that waits, and of no other; a pad comes later too, without waiting whole."""
    assert phase_in("table for six, in phase 3") == 3
    assert [phase_in(label) for label in ("table for six", "in phase 2 of life", "pad and stubs now")] == [None] * 3
    assert [comes_later(label) for label in ("a, in phase 2", "pad and stubs now", "a")] == [True, True, False]


@pytest.mark.parametrize(
    ("text", "key"),
    [
        (changed(NOOK, f"{NOOK}, phase: 2, may_wait: true"), "may_wait"),
        (changed("kind: nook, seats: 2, worth: 3", "kind: reserve, futures: [pool], may_wait: true"), "may_wait"),
        (changed("label: six,", 'label: "six, in phase 2",'), "label"),
    ],
)
def test_what_says_nothing_is_refused(text, key):
    """An open phase beside a given one, one of held ground, and a label that would say of a room that it waits."""
    (problem,) = problems(text)
    assert key in problem
