"""What a layout would cost, and be worth, in each finish level that the brief offers: the same ground, other prices."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from optimizer.appraisal import Cost, priced, worth_placed
from optimizer.brief import Budget
from optimizer.catalogue import PriceBook, finished_book, with_allowances
from optimizer.derived import Derived
from optimizer.scenario import Scenario


@dataclass(frozen=True, slots=True)
class AtLevel:
    """Exact cost and worth of a layout in a finish level; `over` are the phases that then pass their ceilings."""

    level: str
    total: Decimal
    phase_1: Decimal
    worth: float
    over: tuple[int, ...] = ()


def book_of(scenario: Scenario) -> PriceBook:
    """Prices that a scenario is searched and measured by: its book with its finish and the owner's allowances in it."""
    return with_allowances(finished_book(scenario.book, scenario.brief.finish), scenario.brief.budget.allowances)


def at_levels(derived: Derived) -> tuple[AtLevel, ...]:
    """A layout in each level that its brief offers, in the order of the file."""
    return tuple(_priced_at_levels(derived))


def _priced_at_levels(derived: Derived) -> Iterator[AtLevel]:
    brief, worth = derived.scenario.brief, worth_placed(derived.placed)
    for level in brief.finish_levels:
        finished = derived.at_level(level.name)
        cost = priced(finished, book_of(finished.scenario))
        over = tuple(_phases_over(cost, brief.budget))
        yield AtLevel(level.name, cost.total, cost.phase(1), level.worth(worth), over)


def _phases_over(cost: Cost, budget: Budget) -> Iterator[int]:
    for phase, ceiling in ((1, budget.ceiling), *budget.phases):
        if ceiling is not None and cost.phase(phase) > ceiling:
            yield phase
