"""What is possible at all within each ceiling, by the least prices of rooms that have a place: nothing is searched."""

from dataclasses import dataclass, replace
from decimal import Decimal

from optimizer.catalogue import price_ratio
from optimizer.concepts.budgets.programs import Programs, at_prices, programs_of, programs_over
from optimizer.concepts.case import Case
from optimizer.concepts.gather import CENTS
from optimizer.engine.problem import Problem, build_problem

WORTH_FIRST, THEN_COST = 20.0, 5.0
"""Worth and cost count so many times as much as in the search for concepts: here money is there to buy worth."""


@dataclass(frozen=True)
class Possible:
    """The yard read once for the highest ceiling, and the programs that no other one beats.

    Where the brief offers finish levels, `case` and `problem` are in the cheapest, `programs` in all of them.
    """

    case: Case
    problem: Problem
    programs: Programs
    highest: Decimal

    @classmethod
    def of(cls, case: Case, highest: Decimal) -> "Possible":
        """Read the yard of a case whose rooms are all built at once."""
        case = worth_first(in_cheapest_level(case), highest)
        problem = build_problem(case.scenario, case.rooms, case.book)
        return cls(case, problem, _programs(case, problem, highest), highest)

    @property
    def fixed_cents(self) -> int:
        """What is charged once, by the prices of the problem [cents]."""
        return _fixed_cents(self.problem, self.highest)

    def most_worth(self, ceiling: Decimal) -> float:
        """No layout within the ceiling has more worth, in any level, by least prices of rooms that have a place."""
        program = self.programs.best_for(round(ceiling * CENTS))
        return 0.0 if program is None else program.worth

    @property
    def steps(self) -> tuple[tuple[Decimal, float], ...]:
        """Ceilings from which on more is possible, up to the highest, each with the most worth from there."""
        front = [(Decimal(program.cents) / CENTS, program.worth) for program in self.programs.front]
        return tuple((ceiling, worth) for ceiling, worth in front if ceiling <= self.highest)


def _programs(case: Case, problem: Problem, highest: Decimal) -> Programs:
    """Programs by the prices of the case, or of every finish level that it offers."""
    rooms, levels = case.rooms, case.scenario.brief.finish_levels
    priced = [(level, at_prices(problem, case.at_level(level.name).book)) for level in levels]
    if not priced:
        return programs_of(problem, rooms, _fixed_cents(problem, highest))
    return programs_over([(level, programs_of(at, rooms, _fixed_cents(at, highest))) for level, at in priced])


def _fixed_cents(problem: Problem, highest: Decimal) -> int:
    """What is charged once [cents]."""
    budget = problem.budget
    assert budget is not None
    assert budget.most is not None, "a search for budgets has a ceiling"
    return round(highest * CENTS) - budget.most


def in_cheapest_level(case: Case) -> Case:
    """The case in the cheapest finish level that it offers, with a judge that prices all of them; as it is without."""
    levels = case.scenario.brief.finish_levels
    if not levels:
        return case
    cheapest = min(levels, key=lambda level: price_ratio(level.finish))
    return replace(case.at_level(cheapest.name), prices_levels=True)


def worth_first(case: Case, ceiling: Decimal) -> Case:
    """The case under a ceiling, with worth weighing so much that money is spent on it, and on little else."""
    own = case.scenario.brief.weights
    weights = replace(own, worth=WORTH_FIRST * max(1.0, own.worth), cost=THEN_COST * max(1.0, own.cost))
    brief = replace(case.scenario.brief, weights=weights)
    return at_ceiling(replace(case, scenario=replace(case.scenario, brief=brief)), ceiling)


def at_ceiling(case: Case, ceiling: Decimal) -> Case:
    """The case under another ceiling."""
    brief = case.scenario.brief
    brief = replace(brief, budget=replace(brief.budget, ceiling=ceiling))
    return replace(case, scenario=replace(case.scenario, brief=brief))
