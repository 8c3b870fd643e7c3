"""A yard explored for a little while, for tests."""

import threading
from functools import lru_cache

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom, book_for
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.problem import Problem, State, build_problem
from optimizer.scenario import Scenario

NEVER = threading.Event()


@lru_cache(maxsize=8)
def problem_of(scenario: Scenario, rooms: tuple[SizedRoom, ...], without: frozenset[RuleId] = frozenset()) -> Problem:
    """The problem of a yard, which several tests in a row ask for: nothing of it changes while it is explored."""
    return build_problem(scenario, rooms, book_for(scenario.currency), without=without)


def explored(
    scenario: Scenario,
    rooms: tuple[SizedRoom, ...],
    *,
    rebuilds: int = 40,
    seed: int = 1,
    without: frozenset[RuleId] = frozenset(),
) -> Explorer:
    """An explorer that has run one tour, with rules' parts left out."""
    explorer = Explorer(board_of(problem_of(scenario, rooms, without)))
    explorer.run(Tour(rebuilds, seed), stop=NEVER)
    return explorer


def states(explorer: Explorer) -> list[State]:
    """What it passed, best first."""
    return [state for _, state in explorer.pool.ranked()]
