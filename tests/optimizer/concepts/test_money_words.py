"""What a concept costs, as an owner is told."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import cost_of, uncertainty_of
from optimizer.brief import Allowances, Budget, Later
from optimizer.catalogue import Charge, demo_price_book
from optimizer.concepts import about_words, aim_words
from optimizer.concepts.case import Case
from optimizer.concepts.money_cautions import money_cautions
from tests.yards import plain_layout, plain_rooms, plain_yard

NO_STEPS = Budget(contingency=Decimal(0))


def cost(feet, *, phase=1, budget=NO_STEPS):
    """Cost of so many feet of seat wall at 195."""
    return cost_of([Charge(phase, "a", "seat wall", Decimal(str(feet)))], demo_price_book(), budget)


@pytest.mark.parametrize(
    ("feet", "words"),
    [
        (950, "About 185,000 USD; expect 155,000 to 220,000 USD until soil, levels and lines are checked."),
        (100, "About 20,000 USD; expect 17,000 to 23,000 USD until soil, levels and lines are checked."),
        (0, "About 0 USD."),
    ],
)
def test_about_and_expected(feet, words):
    """In steps of 5,000, of 1,000 below 50,000; nothing is expected where nothing is built."""
    assert about_words(cost(feet), "USD") == words


def test_of_several_phases_it_says_which():
    """Each by its own range."""
    charges = [Charge(phase, "a", "seat wall", Decimal(950)) for phase in (1, 2)]
    both = cost_of(charges, demo_price_book(), NO_STEPS)
    assert about_words(both, "USD", 2).startswith("Phase 2: about 185,000 USD; expect 150,000 to 240,000 USD until")


def test_a_case_counts_by_the_owners_allowances():
    """Appliances that the owner buys have no price, for engine and estimate alike."""
    yard = plain_yard()
    budget = replace(yard.brief.budget, allowances=Allowances(appliances=False))
    book = Case.of(replace(yard, brief=replace(yard.brief, budget=budget))).book
    assert (book.of("grill").price, Case.of(yard).book.of("grill").price) == (0, 4600)


def test_what_is_shown_knows_how_sure_it_is():
    """The chance of the ceiling and what moves the cost are worked out for what is shown, and only for that."""
    case = Case(plain_yard(), plain_rooms(), demo_price_book())
    option = case.described(plain_layout(), case.in_full(plain_layout()))
    assert option.uncertainty is None
    shown = case.advised(option)
    assert shown.uncertainty == uncertainty_of(option.appraisal.cost, case.scenario.brief.budget.ceiling)
    assert len(shown.uncertainty.movers) == 5
    assert any(words.startswith("Prices: ") for words in shown.cautions)


def said(ceiling, feet=0, **changes):
    """Cautions of a cost under a ceiling, less the two that are always there."""
    yard = plain_yard(ceiling=ceiling)
    budget = replace(yard.brief.budget, **changes)
    yard = replace(yard, brief=replace(yard.brief, budget=budget))
    prices, allowances, *others = money_cautions(yard, cost(feet, budget=budget))
    assert "invented" in prices
    assert "Appliances are in the sums; furniture is not." in allowances
    return others


def test_a_high_figure_above_the_ceiling_is_a_caution():
    """19,500 has its high figure at 23,400: above a ceiling of 23,000, not above one of 24,000; none without one."""
    (told,) = said("23000", 100, contingency=Decimal(0))
    assert "-15 % to +20 %" in told
    assert "about 23,000 USD, passes the ceiling of 23,000" in told
    assert said("24000", 100, contingency=Decimal(0)) == []
    assert said(None, 100) == []


def test_what_a_first_concept_aims_at():
    """90 % of a ceiling of 20,000 is 18,000: 18,135 (93 ft at 195) is 135 above it, told up to the hundred; 17,940 is not."""
    ceiling = Decimal(20000)
    assert aim_words(cost(92), ceiling, "USD") == "Within 90 % of the ceiling, as a first concept should be."
    told = "About 200 USD above 90 % of the ceiling, where a first concept should be."
    assert aim_words(cost(93), ceiling, "USD") == told
    assert aim_words(cost(93), None, "USD") == ""


def test_when_later_phases_are_built_is_said():
    """In today's prices, or dearer by so many years."""
    yard = plain_yard()
    told_of = {"3.0": "in 3 years, 12.5% dearer", "1.0": "in 1 year, 4.0% dearer", "2.5": "in 2.5 years, 10.3% dearer"}
    budgets = [(Budget(later=Later(Decimal(years), Decimal("0.04"))), words) for years, words in told_of.items()]
    for budget, words in ((Budget(), "as if built today; prices rise until then"), *budgets):
        told = list(money_cautions(replace(yard, brief=replace(yard.brief, budget=budget)), cost(10, phase=2)))
        assert any(words in one and "-20 % to +30 %" in one for one in told)
