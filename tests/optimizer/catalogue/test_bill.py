"""What rooms and the site need of the price book."""

from decimal import Decimal

from optimizer.brief import Brief, Guests, RoomWish
from optimizer.catalogue import (
    PriceBook,
    Quantity,
    SizedChoice,
    SizedRoom,
    UnitPrice,
    charge,
    demo_price_book,
    fixed_charges,
    fixed_price,
    kind_rules,
    room_charges,
    room_price,
)

BOOK = PriceBook(
    "test",
    "2026-09",
    "USD",
    "invented",
    tuple(
        UnitPrice(item, item, "ft", Decimal(price), Decimal(1), Decimal(99))
        for item, price in (("a", "1.01"), ("b", "7"))
    ),
    "",
)
CHOICE = SizedChoice("c", 10, 10, 0, 1.0, quantities=(Quantity("a", 2.5), Quantity("b", 3, phase=1)))


def room(phase: int) -> SizedRoom:
    """A room of a phase with the one choice."""
    return SizedRoom("r", kind_rules("lawn"), required=False, phase=phase, choices=(CHOICE,))


def test_quantities_take_the_rooms_phase_unless_they_have_their_own() -> None:
    """Of a phase-2 room, what has phase 1 of its own is in phase 1."""
    assert [(c.phase, c.item) for c in room_charges(CHOICE, room(2))] == [(2, "a"), (1, "b")]


def test_room_price_is_phase_1_to_the_cent() -> None:
    """2.5 x 1.01 is 2.525, half up 2.53; with 3 x 7 it is 23.53, and only 21 for a room of phase 2."""
    assert room_price(CHOICE, room(1), BOOK) == Decimal("23.53")
    assert room_price(CHOICE, room(2), BOOK) == Decimal("21.00")


def test_charges_round_half_up() -> None:
    """0.125 is 0.13."""
    assert charge(phase=1, room="r", item="a", amount=0.125).quantity == Decimal("0.13")


def test_every_wished_room_is_designed() -> None:
    """One wish more makes the fixed sum dearer by the design of a room."""
    book, wish = demo_price_book(), RoomWish("r", "lawn")
    one, two = (fixed_price(Brief(Guests(4, 12), (wish,) * count), book) for count in (1, 2))
    assert two - one == book.of("design of a room").price
    assert {c.phase for c in fixed_charges(Brief(Guests(4, 12), (wish,)))} == {1}
