"""The engine and what it is held against: each finds a layout of a problem in a time, on one core, building included.

`problem` is one as the model counts it, without estimates.
"""

import threading
import time
from collections.abc import Callable, Sequence

import numpy as np

from optimizer.engine.explorer import Board, Explorer, Limits, board_of, value_of
from optimizer.engine.explorer.insertion import ABSENT_REQUIRED
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.portfolio import Purse, first_tours, tour_of
from optimizer.engine.problem import Problem, Spot, State, modelled_value
from optimizer.engine.prover import polish
from optimizer.engine.prover.solve import Effort, solve
from tests.benchmarks.mixed_integer import solved_by_highs

EXPLORING = 0.6
"""Share of the engine's time before it polishes."""
STARTS = 6
_NO_LIMIT_S = 1e9


def by_engine(problem: Problem, seconds: float) -> State | None:
    """Tours from nothing and from the best, then polishing of the best arrangements, best first."""
    began, board = time.monotonic(), board_of(problem)
    explorer, purse, stop = Explorer(board), Purse(problem), threading.Event()
    timer = threading.Timer(seconds * EXPLORING, stop.set)
    timer.start()
    for tour in first_tours(1, (), 0):
        explorer.run(tour, stop=stop)
    turn = 0
    while not stop.is_set():
        best = [state for _, state in explorer.pool.ranked()[:STARTS]]
        explorer.run(tour_of(problem, turn, seed=1, purse=purse, best=best), stop=stop)
        turn += 1
    return _polished(board, [state for _, state in explorer.pool.ranked()], began + seconds)


def at_random(problem: Problem, seconds: float) -> State | None:
    """Best of layouts that are put together at random."""
    until, board, limits = time.monotonic() + seconds, board_of(problem), Limits.of(problem)
    random, best, least = np.random.default_rng(1), None, ABSENT_REQUIRED
    while time.monotonic() < until:
        state = tuple(None for _ in problem.rooms)
        for room in random.permutation(len(state)).tolist():
            spot = _random_spot(board, limits, state, room, random)
            state = (*state[:room], spot, *state[room + 1 :])
        value = value_of(board, limits, state)
        best, least = (state, value) if value < least else (best, least)
    return best


def by_model(problem: Problem, seconds: float) -> State | None:
    """CP-SAT on the whole model, building included."""
    until = time.monotonic() + seconds
    built = build_model(problem, whole_scope(problem))
    return solve(built, Effort(wall_s=max(0.1, until - time.monotonic()), deterministic_s=_NO_LIMIT_S)).state


def _polished(board: Board, states: Sequence[State], until: float) -> State | None:
    """The best once as many arrangements as there is time for have been polished."""
    best = min(states, key=lambda state: modelled_value(board.problem, state), default=None)
    alarm = threading.Event()
    timer = threading.Timer(max(0.0, until - time.monotonic()), alarm.set)
    timer.daemon = True
    timer.start()
    for state in states:
        if alarm.is_set() or best is None:
            break
        found = polish(board, state, stop=alarm)
        best = found.state if found.objective < modelled_value(board.problem, best) else best
    return best


def _random_spot(board: Board, limits: Limits, state: State, room: int, random: np.random.Generator) -> Spot | None:
    """A place of the first size, by a random order, that has any; None where the room fits nowhere."""
    others = [(other, spot) for other, spot in enumerate(state) if spot is not None]
    for v in random.permutation(sorted(limits.left_for(state, room)[0])).tolist():
        allowed = board.problem.rooms[room].allowed[v]
        table = np.where(allowed, np.int64(0), np.int64(FORBIDDEN))
        for other, spot in others:
            board.stamp(room, v, other, spot.variant).add_to(table, -spot.x, -spot.y)
        free = np.flatnonzero(table < FORBIDDEN)
        if len(free):
            y, x = divmod(int(random.choice(free)), table.shape[1])
            return Spot(v, x, y)
    return None


WAYS: dict[str, Callable[[Problem, float], State | None]] = {
    "engine": by_engine,
    "random": at_random,
    "model": by_model,
    "highs": solved_by_highs,
}
