"""What to know of a concept's money: where prices come from, what is not in it, and how far it may be off."""

from collections.abc import Iterator

from optimizer.appraisal import Cost
from optimizer.catalogue import allowance_words, class_of, narrowest, rounded
from optimizer.scenario import Scenario


def money_cautions(scenario: Scenario, cost: Cost | None) -> Iterator[str]:
    """Sentences about prices and allowances, and of a known cost about its ceiling and its later phases."""
    yield scenario.book.said
    yield f"Owner's allowances: {allowance_words(scenario.brief.budget.allowances, scenario.currency)}"
    if cost is not None:
        yield from _high_figure(scenario, cost)
        yield from _later(scenario, cost)


def _high_figure(scenario: Scenario, cost: Cost) -> Iterator[str]:
    ceiling, known = scenario.brief.budget.ceiling, cost.range_of(1)
    if ceiling is not None and known is not None and known.high > ceiling:
        spread, currency = narrowest(known.estimate_class).words, scenario.currency
        yield (
            f"Money: the range of phase 1 is {spread}. Its high figure, about {rounded(known.high):,.0f} {currency}, "
            f"passes the ceiling of {ceiling:,.0f} {currency}: agree now on what would wait."
        )


def _later(scenario: Scenario, cost: Cost) -> Iterator[str]:
    budget = scenario.brief.budget
    for phase, _ in cost.phases:
        if phase > 1:
            rise = budget.later.rise(phase)
            years = budget.later.years * (phase - 1)
            apart = f"{years.normalize():f} year{'s' * (years != 1)}"
            when = f"in {apart}, {rise:.1%} dearer than today" if rise else "today; prices rise until then"
            spread = narrowest(class_of(phase, budget.estimate_class)).words
            yield f"Phase {phase}: priced as if built {when}. Its range is {spread}."
