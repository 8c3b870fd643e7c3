"""Cost sheets."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from optimizer.appraisal import CostRange, cost_of, uncertainty_of
from optimizer.brief import Allowances, Budget, Later
from optimizer.catalogue import Charge, PriceBook, UnitPrice, with_allowances

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
ONES = replace(BOOK, prices=(UnitPrice("hour", "Hour", "h", Decimal(1), Decimal(1), Decimal(1)),))
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


SHARES = st.decimals(0, 1, places=3)
BUDGETS = st.builds(
    Budget,
    contingency=SHARES,
    overhead=SHARES,
    markup=SHARES,
    tax=SHARES,
    later=st.builds(Later, years=st.decimals(0, 10, places=1), escalation=st.decimals(0, "0.2", places=3)),
)


def plain(share: str) -> Budget:
    """Nothing but contingency."""
    return Budget(contingency=Decimal(share))


@given(charges=CHARGES, budget=BUDGETS)
def test_sheets_add_up_to_the_cent(charges: list[Charge], budget: Budget) -> None:
    """Every amount is quantity x unit price to the cent; phases are the sums of their lines; the total that of phases;
    and the ranges of the phases add up to the range of the whole, round the total.
    """
    cost = cost_of(charges, BOOK, budget)
    assert all(abs(line.quantity * line.unit_price - line.amount) <= Decimal("0.005") for line in cost.lines)
    assert all(line.amount.as_tuple().exponent == -2 for line in cost.lines)
    assert all(line.low <= line.amount <= line.high for line in cost.lines)
    for phase, total in cost.phases:
        assert total == sum(line.amount for line in cost.lines if line.phase == phase)
    assert cost.total == sum(total for _, total in cost.phases)
    assert cost.low <= cost.total <= cost.high
    assert [phase for phase, _ in cost.ranges] == [phase for phase, _ in cost.phases]
    for phase, one in cost.ranges:
        assert one.low <= cost.phase(phase) <= one.high
        assert one.low <= cost.low
        assert one.high <= cost.high
    assert sum(one.low for _, one in cost.ranges) == cost.low
    assert sum(one.high for _, one in cost.ranges) == cost.high


@given(charges=CHARGES, budget=BUDGETS, dearer=st.decimals(0, 500, places=2), item=st.sampled_from(["wall", "lawn"]))
def test_a_dearer_price_never_lowers_a_total(charges: list[Charge], budget: Budget, dearer: Decimal, item: str) -> None:
    """Whatever the steps: no phase and no range gets cheaper."""
    prices = tuple(
        replace(p, price=p.price + dearer, high=p.high + dearer) if p.item == item else p for p in BOOK.prices
    )
    before, after = cost_of(charges, BOOK, budget), cost_of(charges, replace(BOOK, prices=prices), budget)
    assert after.total >= before.total
    assert all(after.phase(phase) >= total for phase, total in before.phases)
    assert after.low >= before.low
    assert after.high >= before.high


@given(charges=CHARGES, budget=BUDGETS)
def test_the_least_of_a_budget_is_never_more_than_its_sheet(charges: list[Charge], budget: Budget) -> None:
    """What the engine takes from the sum of phase 1's lines is a floor of phase 1, and no more than cents below it."""
    cost = cost_of([replace(charge, phase=1) for charge in charges], BOOK, budget)
    lines = sum((line.amount for line in cost.lines if not line.is_step), Decimal(0))
    if lines:
        assert budget.least(lines) <= cost.phase(1) <= budget.least(lines) + Decimal("0.20")


def test_amounts_round_half_up() -> None:
    """1.5 ft of wall at 195.55 is 293.325, so 293.33; 10 % contingency of it 29.33."""
    cost = cost_of([Charge(1, "fire", "wall", Decimal("1.50"))], BOOK, plain("0.10"))
    assert [line.amount for line in cost.lines] == [Decimal("293.33"), Decimal("29.33")]
    assert cost.total == cost.phase(1) == Decimal("322.66")


def test_each_phase_has_its_own_contingency() -> None:
    """Two phases, two lines of contingency, each on what its phase builds; a phase without work costs nothing."""
    charges = [Charge(2, "a", "lawn", Decimal(100)), Charge(1, "b", "lawn", Decimal(200))]
    cost = cost_of(charges, BOOK, plain("0.15"))
    closing = {line.phase: line.amount for line in cost.lines if line.item == "contingency"}
    assert closing == {1: Decimal("99.90"), 2: Decimal("49.95")}
    assert cost.phase(3) == 0


def test_steps_follow_one_another() -> None:
    """1,000 with 10 % overhead, 5 % markup, 15 % contingency and 7 % tax: each on all that comes before it."""
    budget = Budget(contingency=Decimal("0.15"), overhead=Decimal("0.1"), markup=Decimal("0.05"), tax=Decimal("0.07"))
    cost = cost_of([Charge(1, "a", "hour", Decimal(1000))], ONES, budget)
    assert [(line.item, str(line.amount)) for line in cost.lines] == [
        ("hour", "1000.00"),
        ("overhead", "100.00"),
        ("markup", "55.00"),
        ("contingency", "173.25"),
        ("tax", "92.98"),
    ]
    assert cost.total == Decimal("1421.23")
    assert [line.how for line in cost.lines[:2]] == ["1000 h of hour at 1.00", "10 % of 1,000.00"]


def test_what_the_owner_sets_aside_is_no_builders_work() -> None:
    """1,000 with 15 % contingency, and 8,000 for furniture that nothing is added to: not in a step, not in a range."""
    allowances = Allowances(furniture=Decimal(8000))
    budget, book = replace(plain("0.15"), allowances=allowances), with_allowances(ONES, allowances)
    cost = cost_of([Charge(1, "site", "furniture", Decimal(1)), Charge(1, "a", "hour", Decimal(1000))], book, budget)
    alone = cost_of([Charge(1, "a", "hour", Decimal(1000))], ONES, plain("0.15"))
    furniture = cost.lines[-1]
    assert (furniture.item, furniture.amount, furniture.source) == ("furniture", 8000, "the scenario's budget")
    assert cost.lines[:-1] == alone.lines
    assert (cost.total, cost.low, cost.high) == (alone.total + 8000, alone.low + 8000, alone.high + 8000)
    assert budget.least(Decimal(1000)) <= cost.phase(1)
    sure = uncertainty_of(cost, None)
    assert sure is not None
    assert sure.one_in_ten_below == sure.one_in_ten_above == Decimal(9200)


def test_later_phases_are_priced_in_their_year() -> None:
    """Three years between phases at 4 %: phase 2 rises by 12.4864 %, phase 3 by twice as many years; phase 1 not."""
    budget = Budget(contingency=Decimal(0), later=Later(Decimal(3), Decimal("0.04")))
    cost = cost_of([Charge(phase, "a", "hour", Decimal(10000)) for phase in (1, 2, 3)], ONES, budget)
    assert [str(total) for _, total in cost.phases] == ["10000.00", "11248.64", "12653.19"]
    assert [line.phase for line in cost.lines if line.item == "escalation"] == [2, 3]


def test_each_line_says_whose_price_it_has() -> None:
    """The firm's, with its date; an invented one; and none, of what is left to the owner."""
    book = replace(
        BOOK, prices=(*BOOK.prices, UnitPrice("grill", "Grill", "each", *[Decimal(0)] * 3)), invented=("lawn",)
    )
    cost = cost_of([Charge(1, "a", item, Decimal(2)) for item in ("wall", "lawn", "grill")], book, plain("0"))
    assert [line.source for line in cost.lines] == [
        "test, 2026-09",
        "invented price",
        "left to the owner, not in the sums",
        "the scenario's budget",
    ]


def test_nothing_costs_nothing() -> None:
    """No charges, or charges of no quantity, make an empty sheet."""
    for charges in ([], [Charge(1, "a", "lawn", Decimal("0.00"))]):
        cost = cost_of(charges, BOOK, Budget())
        assert (cost.lines, cost.phases, cost.ranges, cost.total) == ((), (), (), Decimal(0))


def test_lines_have_the_books_range_and_phases_that_of_their_class() -> None:
    """10 ft of wall: 1,600 to 2,400 by the book. Phase 1 is class 4, 15 % below to 20 % above; phase 2 is class 5."""
    cost = cost_of([Charge(phase, "a", "wall", Decimal(10)) for phase in (1, 2)], BOOK, plain("0"))
    assert (cost.lines[0].low, cost.lines[0].high) == (Decimal(1600), Decimal(2400))
    assert cost.range_of(1) == CostRange(Decimal("1662.18"), Decimal("2346.60"), 4)
    assert cost.range_of(2) == CostRange(Decimal("1564.40"), Decimal("2542.15"), 5)
    assert (cost.low, cost.high) == (Decimal("3226.58"), Decimal("4888.75"))
    narrower = cost_of([Charge(1, "a", "wall", Decimal(10))], BOOK, replace(plain("0"), estimate_class=3))
    assert narrower.range_of(1) == CostRange(Decimal("1759.95"), Decimal("2151.05"), 3)


def test_an_unknown_item_is_a_fault() -> None:
    """A charge for what the book does not have is never priced at nothing."""
    with pytest.raises(KeyError):
        cost_of([Charge(1, "a", "fountain", Decimal(1))], BOOK, Budget())
