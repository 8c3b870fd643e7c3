"""How sure an estimate is."""

from decimal import Decimal

import numpy as np
import pytest

from optimizer.appraisal import cost_of, uncertainty_of
from optimizer.appraisal.uncertainty import normals, triangular
from optimizer.brief import Budget
from optimizer.catalogue import Charge, PriceBook, UnitPrice

ITEMS = ("wall", "lawn", "steps", "pool", "light", "shed")
BOOK = PriceBook(
    "test",
    "2026-09",
    "USD",
    "invented",
    tuple(UnitPrice(item, item, "each", Decimal(100), Decimal(80), Decimal(120)) for item in ITEMS),
    "",
)
NO_STEPS = Budget(contingency=Decimal(0))


def sheet(*charges, budget=NO_STEPS, phase=1):
    """Cost sheet of items and how many of each."""
    lines = [Charge(phase, f"room {i}", item, Decimal(count)) for i, (item, count) in enumerate(charges)]
    return cost_of(lines, BOOK, budget)


def spread(found):
    """What lies between the ends of eight times in ten."""
    return float(found.one_in_ten_above - found.one_in_ten_below)


ALL = tuple((item, 10) for item in ITEMS)


def test_one_price_is_its_triangle():
    """1,000 of one item: eight times in ten within 200 x (1 - sqrt(0.2)) of it, by the triangle's own quantiles; as
    likely above as below.
    """
    found = uncertainty_of(sheet(("wall", 10)), Decimal(1000))
    assert spread(found) == pytest.approx(400 * (1 - 0.2**0.5), abs=100)
    assert found.chance_under == pytest.approx(0.5, abs=0.02)


def test_a_shared_market_widens_the_range():
    """Six prices that go their own ways cancel out; with a market that they share they do not: the range is at least
    half as wide again. With one market for all it is that of a single price.
    """
    alone, shared, one = (uncertainty_of(sheet(*ALL), None, correlation=rho) for rho in (0.0, 0.5, 1.0))
    assert spread(shared) > 1.5 * spread(alone)
    assert spread(one) == pytest.approx(6 * spread(uncertainty_of(sheet(("wall", 10)), None)), abs=200)


def test_the_usual_correlation_is_a_half_at_least():
    """Independent lines shrink the range falsely."""
    assert spread(uncertainty_of(sheet(*ALL), None)) >= spread(uncertainty_of(sheet(*ALL), None, correlation=0.5))


def test_lines_of_one_item_share_its_price():
    """The same wall in six rooms is as unsure as in one."""
    many = uncertainty_of(sheet(*(("wall", 10),) * 6), None, correlation=0.0)
    assert spread(many) == spread(uncertainty_of(sheet(("wall", 60)), None, correlation=0.0))


def test_a_line_has_the_draw_of_its_own_item():
    """In whatever order the lines come: of wall, lawn and wall the two walls move together."""
    found = uncertainty_of(sheet(("wall", 10), ("lawn", 1), ("wall", 10)), None, correlation=0.0)
    assert [mover.room for mover in found.movers] == ["room 0", "room 2", "room 1"]
    assert found.movers[0].share == found.movers[1].share


def test_draws_are_normal_and_share_a_market():
    """Each item's draws have a mean of 0 and a deviation of 1; any two of them the correlation that is asked for."""
    drawn = normals(4, 0.5)
    assert drawn.mean(axis=1) == pytest.approx([0] * 4, abs=0.05)
    assert drawn.std(axis=1) == pytest.approx([1] * 4, abs=0.05)
    assert np.corrcoef(drawn)[np.triu_indices(4, 1)] == pytest.approx([0.5] * 6, abs=0.05)


def test_chances_go_with_the_ceiling_and_the_steps():
    """Never under the sum of all low ends, always under that of all high ends; dearer steps make it less likely."""
    cost = sheet(*ALL)
    chances = [uncertainty_of(cost, Decimal(ceiling)).chance_under for ceiling in (4799, 5800, 6000, 6200, 7201)]
    assert (chances[0], chances[-1]) == (0, 1)
    assert chances == sorted(chances)
    taxed = sheet(*ALL, budget=Budget(contingency=Decimal(0), tax=Decimal("0.02")))
    assert uncertainty_of(taxed, Decimal(6000)).chance_under < uncertainty_of(cost, Decimal(6000)).chance_under
    assert uncertainty_of(cost, None).chance_under is None


def test_the_five_that_move_it_most():
    """Of six lines the five largest, the largest first; together they are most of it, and no more than all."""
    found = uncertainty_of(sheet(*((item, 10 + 5 * i) for i, item in enumerate(ITEMS))), None)
    assert [mover.item for mover in found.movers] == list(reversed(ITEMS[1:]))
    shares = [mover.share for mover in found.movers]
    assert shares == sorted(shares, reverse=True)
    assert 0.9 < sum(shares) < 1


def test_it_repeats_and_asks_for_phase_1_alone():
    """The same sheet gives the same answer; what is built later is not in it, and nothing built is no answer."""
    later = sheet(("pool", 100), phase=2)
    assert uncertainty_of(sheet(*ALL), Decimal(6000)) == uncertainty_of(sheet(*ALL), Decimal(6000))
    assert uncertainty_of(later, Decimal(1)) is None
    assert uncertainty_of(sheet(), None) is None


def test_triangles():
    """Ends, the likely value at its rank, and shapes without a rising or a falling side, or with neither."""
    ranks = np.array([[0.0, 0.25, 1.0]])
    low, likely, high = (np.array([[value]]) for value in (0.0, 1.0, 4.0))
    assert triangular(ranks, low, likely, high)[0] == pytest.approx([0, 1, 4])
    assert triangular(ranks, low, low, high)[0] == pytest.approx([0, 4 - 4 * 0.75**0.5, 4])
    assert triangular(ranks, low, high, high)[0] == pytest.approx([0, 2, 4])
    assert triangular(ranks, likely, likely, likely)[0] == pytest.approx([1, 1, 1])
