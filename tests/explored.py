"""A yard explored for a little while, for tests."""

import threading

from optimizer.catalogue import SizedRoom, book_for
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.problem import State, build_problem
from optimizer.scenario import Scenario

NEVER = threading.Event()


def explored(
    scenario: Scenario,
    rooms: tuple[SizedRoom, ...],
    *,
    rebuilds: int = 40,
    seed: int = 1,
    without: frozenset[str] = frozenset(),
) -> Explorer:
    """An explorer that has run one tour, with rules' parts left out."""
    problem = build_problem(scenario, rooms, book_for(scenario.currency), without=without)  # type: ignore[arg-type]
    explorer = Explorer(board_of(problem))
    explorer.run(Tour(rebuilds, seed), stop=NEVER)
    return explorer


def states(explorer: Explorer) -> list[State]:
    """What it passed, best first."""
    return [state for _, state in explorer.pool.ranked()]
