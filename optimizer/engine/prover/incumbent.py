"""A strong layout of one program to begin a proof from: the explorer on it alone, then its best arrangements polished.

Money is not asked, since the list of programs did, nor whether the layout can be walked, since the model does not.
"""

import threading
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Final

from optimizer.engine.explorer import Explorer, Tour
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.problem import Problem, State, modelled_value
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.solve import Answer, Effort, hint, solve

TOURS, REBUILDS, POLISHED = 8, 60, 3
WORTH_POLISHING: Final = 1.06
"""Layouts beyond so many times the best one are left as they are."""
_POLISH: Final = Effort(workers=1, deterministic_s=0.3, wall_s=10.0, linearization=0, presolve_rounds=1)


@dataclass(frozen=True, slots=True)
class Incumbent:
    """A layout, or None where none was found, and the solver's deterministic time that it took."""

    state: State | None = None
    work_s: float = 0.0


def best_of_program(
    problem: Problem, places: Places, limit: int, *, seed: int, stop: threading.Event, work_s: float
) -> Incumbent:
    """A layout of the program that the model counts below the limit, as a state of the whole problem.

    `work_s`: so much of the solver's deterministic time at most, infinite for any.
    """
    explorer = Explorer(places.board)
    for turn in range(TOURS):
        explorer.run(Tour(REBUILDS, seed + turn), stop=stop)
    found = [places.whole(state) for _, state in explorer.pool.ranked()[:POLISHED]]
    return _best_of(problem, found, limit, stop, work_s)


def _best_of(problem: Problem, found: Sequence[State], limit: int, stop: threading.Event, work_s: float) -> Incumbent:
    """The best of these layouts and of those in their arrangements, if it is below the limit."""
    value = partial(modelled_value, problem)
    best = min((state for state in found if value(state) < limit), key=value, default=None)
    limit, spent_s = limit if best is None else value(best), 0.0
    for state in found:
        if value(state) > WORTH_POLISHING * limit or spent_s >= work_s or stop.is_set():
            continue
        answer = _polished(problem, state, limit, stop, work_s - spent_s)
        spent_s += answer.work_s
        if answer.state is not None:
            best, limit = answer.state, value(answer.state)
    return Incumbent(best, spent_s)


def _polished(problem: Problem, state: State, limit: int, stop: threading.Event, work_s: float) -> Answer:
    """The best of a state's arrangement, if it is below the limit and found soon."""
    built = build_model(problem, arrangement_scope(problem, key_of(problem, state)))
    hint(built, state)
    effort = replace(_POLISH, cutoff=limit, deterministic_s=min(_POLISH.deterministic_s, work_s))
    return solve(built, effort, stop=stop)
