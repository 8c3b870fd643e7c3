"""What may come later in money: what preparing costs and saves, and the chance at which it pays."""

from decimal import Decimal

import pytest

from optimizer.appraisal import outlooks, pays_above
from optimizer.catalogue import LaterRates, book_for, later
from optimizer.layout import Placement
from tests.optimizer.derived.futures.yard import HELD, derived, yard

BOOK = book_for("USD")
TABLE = Placement("table", "plain", 56.0, 70.0, 16.0, 20.0, "+y")
"""Flush with the held ground over 20 ft."""


def found(*others: Placement, changes: tuple[tuple[str, str], ...] = ()):
    return {one.future: one for one in outlooks(derived(yard(*changes), *others), BOOK)}


def test_present_value_against_a_published_factor() -> None:
    """Without escalation 3 % over 5 years leave 0.863 (single present value factor, federal life-cycle tables); 2 % real
    growth and 3 % inflation escalate by 5.06 % a year (GSA P100).
    """
    assert LaterRates(5, 0.0, 0.03, 0.2).present_share == pytest.approx(0.863, abs=5e-4)
    assert LaterRates(1, 0.02 + 0.03 + 0.02 * 0.03, 0.0, 0.2).present_share == pytest.approx(1.0506)


def test_the_chance_at_which_preparing_pays() -> None:
    """1,000 now that save 2,000 pay from one chance in two on; with money at 3 % over 5 years from 0.579 on; never where
    they save less than they cost. By hand: 1000 / (2000 x 0.863).
    """
    free = LaterRates(5, 0.0, 0.0, 0.2)
    assert pays_above(Decimal(1000), Decimal(2000), free) == pytest.approx(0.5)
    assert pays_above(Decimal(1000), Decimal(2000), LaterRates(5, 0.0, 0.03, 0.2)) == pytest.approx(0.5796, abs=1e-3)
    assert pays_above(Decimal(1000), Decimal(999), free) is None
    assert pays_above(Decimal(0), Decimal(0), free) is None


def test_at_that_chance_both_cost_the_same() -> None:
    """Now + p x later with it = p x later without it, in present money, for every future."""
    for one in found(TABLE).values():
        money, share = one.money, later().present_share
        assert money.pays_above is not None
        expected = [money.pays_above * share * float(amount) for amount in (money.later_with, money.later_without)]
        assert float(money.now) + expected[0] == pytest.approx(expected[1], rel=1e-4)


@pytest.mark.parametrize(
    ("given", "phase", "years", "escalation"),
    [("{}", 2, 5, 0.04), ("{years: 3}", 2, 3, 0.04), ("{years: 3, escalation: 0.06}", 3, 6, 0.06)],
)
def test_the_scenario_says_when_and_how_much_dearer(given: str, phase: int, years: float, escalation: float) -> None:
    """Its years are from one phase to the next; what it leaves out is as usual. The chance goes by them, by hand."""
    scenario = yard(("brief:", f"budget: {{ceiling: 90000, later: {given}}}\nbrief:"), ("phase: 2", f"phase: {phase}"))
    pool = next(one for one in outlooks(derived(scenario, TABLE), BOOK) if one.future == "pool").money
    worth = float(pool.later_without - pool.later_with) * ((1 + escalation) / 1.05) ** years
    assert pool.pays_above == pytest.approx(float(pool.now) / worth, abs=1e-4)


def test_what_is_prepared() -> None:
    """Runs from (70, 40) and (70, 44) to the held ground, whose corner lies at (56, 70): 14 + 30 and 14 + 26 ft; the base
    of 36 x 22 ft less 28 x 14 of water; a footing along 20 ft of terrace. A tub has electricity alone and no dig.
    """
    pool, tub = (
        {line.item: float(line.quantity) for line in found(TABLE)[name].money.prepare} for name in ("pool", "hot tub")
    )
    assert pool.pop("contingency") == 0.15
    assert pool == {
        "electric run": 44.0,
        "gas run": 40.0,
        "base under later deck": 400.0,
        "footing for later": 20.0,
    }
    assert {"electric run", "base under later deck", "contingency"} == set(tub)
    assert "run" not in BOOK.of("reserve kept clear").words, "runs are paid for by what is prepared, once"


def test_what_the_later_phase_holds() -> None:
    """The future, coming back, and what is put back on its way; later_with is that less the runs and the base which are
    there already; without them a trench is dug anew and everything is 20 % dearer. By hand, to the cent.
    """
    pool = found(TABLE)["pool"]
    lines = {line.item: line for line in pool.money.later}
    assert {"future pool", "return to the site", "lawn repair"} <= set(lines)
    assert "crane" not in lines
    assert float(lines["lawn repair"].quantity) == pytest.approx(dict(pool.access.crosses)["lawn"], abs=0.01)
    prepared = Decimal(1) * (44 * 15 + 40 * 24 + 400 * Decimal("8.5"))
    total = sum(line.amount for line in pool.money.later)
    with_contingency = Decimal("1.15")
    back = Decimal("1.12")  # coming back, of all that the later phase builds
    assert pool.money.later_with == pytest.approx(total - prepared * with_contingency * back, abs=Decimal("0.02"))
    edge = Decimal(20 * 75)
    saved = back * with_contingency * ((prepared + edge) * Decimal("1.2") + 44 * 28)
    assert pool.money.later_without - pool.money.later_with == pytest.approx(saved, abs=Decimal("0.02"))


def test_a_crane_where_nothing_drives_in() -> None:
    """An entrance of 5 ft: only the tub comes in on a cart; what must be lifted in pays a crane."""
    shut = (("{name: drive, at: [80, 0], width: 12}", "{name: drive, at: [80, 0], width: 5}"),)
    outlook = found(changes=shut)
    paid = {name: [line.item for line in one.money.later] for name, one in outlook.items()}
    assert ["crane" in items for items in paid.values()] == [False, True, True]
    assert [one.is_open for one in outlook.values()] == [True, False, False]


def test_nothing_held_has_no_outlook() -> None:
    """Without a reserve there is none."""
    scenario = yard()
    assert outlooks(derived(scenario, held=TABLE), BOOK) == ()
    assert HELD.room not in {placement.room for placement in derived(scenario, held=TABLE).placed.layout.placements}
