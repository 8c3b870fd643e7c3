"""Owner's allowances in a price book and out of it, and the assemblies of its items."""

from decimal import Decimal

import pytest

from optimizer.brief import Allowances, Brief, Budget, Guests, RoomWish
from optimizer.catalogue import (
    OTHER,
    STEPS,
    allowance_words,
    assemblies,
    assembly_of,
    book_for,
    bought_by_owners,
    demo_price_book,
    fixed_price,
    room_price,
    sized_room,
    with_allowances,
)

OUT = Allowances(appliances=False)


def test_appliances_left_to_the_owner_cost_nothing():
    """They keep their line, at no price; all else keeps its price; the floor of a kitchen falls by just that much."""
    book, kitchen = demo_price_book(), sized_room(RoomWish("kitchen", "kitchen", worth=5))
    without = with_allowances(book, OUT)
    assert without.of("grill").high == 0
    assert without.of("lawn") == book.of("lawn")
    assert with_allowances(book, Allowances()) is book
    choice = kitchen.choices[-1]
    owners = sum(
        Decimal(str(q.amount)) * book.of(q.item).price for q in choice.quantities if q.item in bought_by_owners()
    )
    assert owners > 0
    assert room_price(choice, kitchen, book) - room_price(choice, kitchen, without) == owners


def test_a_sum_for_furniture_is_in_every_floor():
    """Set aside once, in phase 1, whatever is placed, and as it stands: no step is taken on it."""
    wish, allowances = RoomWish("r", "lawn"), Allowances(furniture=Decimal(8000))
    plain, with_sum = (Brief(Guests(4, 12), (wish,), budget=Budget(allowances=a)) for a in (Allowances(), allowances))
    book = with_allowances(demo_price_book(), allowances)
    once = fixed_price(with_sum, book)
    assert once == fixed_price(plain, demo_price_book())
    assert with_sum.budget.least(once) - plain.budget.least(once) == 8000


def test_what_is_in_and_out_is_said():
    """Both ways, with the sum."""
    assert allowance_words(OUT, "USD") == "Appliances are the owner's, not in the sums; furniture is not."
    both = Allowances(furniture=Decimal(8000))
    assert (
        allowance_words(both, "USD") == "Appliances are in the sums; furniture is in them with 8,000 USD, as it stands."
    )


@pytest.mark.parametrize("currency", ["USD", "AUD"])
def test_every_item_is_part_of_one_assembly(currency):
    """About fifteen of them; none of the items is left over."""
    found = {assembly_of(price.item) for price in book_for(currency).prices}
    assert OTHER not in found
    assert found < set(assemblies())
    assert 12 <= len(found) <= 18
    assert (assembly_of("fountain"), assemblies()[-1]) == (OTHER, STEPS)
