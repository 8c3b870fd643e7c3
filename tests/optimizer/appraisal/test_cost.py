"""Cost sheets."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from optimizer.appraisal import cost_of
from optimizer.catalogue import Charge, PriceBook, UnitPrice

BOOK = PriceBook(
    name="test",
    date="2026-09",
    currency="USD",
    note="invented",
    prices=(
        UnitPrice("wall", "Wall", "ft", Decimal("195.55"), Decimal(160), Decimal(240)),
        UnitPrice("lawn", "Lawn", "sq ft", Decimal("3.33"), Decimal("2.01"), Decimal(5)),
    ),
    digest="",
)
CHARGES = st.lists(
    st.builds(
        Charge,
        phase=st.integers(1, 3),
        room=st.just("room"),
        item=st.sampled_from(["wall", "lawn"]),
        quantity=st.decimals(0, 5000, places=2),
    ),
    max_size=12,
)


@given(charges=CHARGES, contingency=st.decimals(0, 1, places=3))
def test_sheets_add_up_to_the_cent(charges: list[Charge], contingency: Decimal) -> None:
    """Every amount is quantity x unit price to the cent; phases are the sums of their lines; the total that of phases."""
    cost = cost_of(charges, BOOK, contingency)
    assert all(abs(line.quantity * line.unit_price - line.amount) <= Decimal("0.005") for line in cost.lines)
    assert all(line.amount.as_tuple().exponent == -2 for line in cost.lines)
    for phase, total in cost.phases:
        assert total == sum(line.amount for line in cost.lines if line.phase == phase)
    assert cost.total == sum(total for _, total in cost.phases)
    assert cost.low <= cost.total <= cost.high


def test_amounts_round_half_up() -> None:
    """1.5 ft of wall at 195.55 is 293.325, so 293.33; 10 % contingency of it 29.33."""
    cost = cost_of([Charge(1, "fire", "wall", Decimal("1.50"))], BOOK, Decimal("0.10"))
    assert [line.amount for line in cost.lines] == [Decimal("293.33"), Decimal("29.33")]
    assert cost.total == cost.phase(1) == Decimal("322.66")


def test_each_phase_has_its_own_contingency() -> None:
    """Two phases, two lines of contingency, each on what its phase builds; a phase without work costs nothing."""
    charges = [Charge(2, "a", "lawn", Decimal(100)), Charge(1, "b", "lawn", Decimal(200))]
    cost = cost_of(charges, BOOK, Decimal("0.15"))
    closing = {line.phase: line.amount for line in cost.lines if line.item == "contingency"}
    assert closing == {1: Decimal("99.90"), 2: Decimal("49.95")}
    assert cost.phase(3) == 0


def test_nothing_costs_nothing() -> None:
    """No charges, or charges of no quantity, make an empty sheet."""
    for charges in ([], [Charge(1, "a", "lawn", Decimal("0.00"))]):
        cost = cost_of(charges, BOOK, Decimal("0.15"))
        assert (cost.lines, cost.phases, cost.total) == ((), (), Decimal(0))


def test_low_and_high_use_the_books_range() -> None:
    """10 ft of wall: 1,600 to 2,400 before contingency."""
    cost = cost_of([Charge(1, "a", "wall", Decimal(10))], BOOK, Decimal(0))
    assert (cost.low, cost.high) == (Decimal(1600), Decimal(2400))


def test_an_unknown_item_is_a_fault() -> None:
    """A charge for what the book does not have is never priced at nothing."""
    with pytest.raises(KeyError):
        cost_of([Charge(1, "a", "fountain", Decimal(1))], BOOK, Decimal(0))
