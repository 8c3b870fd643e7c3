"""A strong layout of one program to begin a proof from: the explorer on it alone, then its best arrangements polished.

Money is not asked, since the list of programs did, nor whether the layout can be walked, since the model does not.
"""

import threading
from dataclasses import replace
from typing import Final

from optimizer.engine.explorer import Explorer, Tour
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.problem import Problem, State, modelled_value
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.solve import Effort, hint, solve

TOURS, REBUILDS, POLISHED = 8, 60, 3
WORTH_POLISHING: Final = 1.06
"""Layouts beyond so many times the best one are left as they are."""
_POLISH: Final = Effort(workers=1, deterministic_s=0.3, wall_s=10.0, linearization=0, presolve_rounds=1)


def best_of_program(problem: Problem, places: Places, limit: int, *, seed: int, stop: threading.Event) -> State | None:
    """A layout of the program that the model counts below the limit, as a state of the whole problem; None where none
    was found.
    """
    explorer = Explorer(places.board)
    for turn in range(TOURS):
        explorer.run(Tour(REBUILDS, seed + turn), stop=stop)
    best = None
    found = [places.whole(state) for _, state in explorer.pool.ranked()[:POLISHED]]
    for state in found:
        objective = modelled_value(problem, state)
        if objective < limit:
            best, limit = state, objective
    for state in found:
        is_near = modelled_value(problem, state) <= WORTH_POLISHING * limit
        better = _polished(problem, state, limit, stop) if is_near and not stop.is_set() else None
        if better is not None:
            best, limit = better, modelled_value(problem, better)
    return best


def _polished(problem: Problem, state: State, limit: int, stop: threading.Event) -> State | None:
    """The best of a state's arrangement, if it is below the limit and found soon."""
    built = build_model(problem, arrangement_scope(problem, key_of(problem, state)))
    hint(built, state)
    return solve(built, replace(_POLISH, cutoff=limit), stop=stop).state
