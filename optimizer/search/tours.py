"""The explorer's programme: one free run, one without each optional room, and runs from other seeds."""

import threading
from collections.abc import Callable

from optimizer.search.board import Board
from optimizer.search.explore import Pool, Tour, explore
from optimizer.search.state import State

FIRST, FURTHER = 220, 90


def run_tours(board: Board, *, seed: int, stop: threading.Event, on_best: Callable[[int, State], None]) -> Pool:
    """Run every tour; a fixed number of rebuilds each, so that the same seed passes the same layouts."""
    pool = Pool()
    for tour in tours_of(board, seed):
        explore(board, pool, tour, stop=stop, on_best=on_best)
    return pool


def tours_of(board: Board, seed: int) -> tuple[Tour, ...]:
    """Tours of an instance, in order."""
    optional = [index for index, room in enumerate(board.instance.rooms) if not room.required]
    free = [Tour(FIRST, seed), Tour(FIRST, seed + 1), Tour(FURTHER, seed + 2)]
    return (*free, *(Tour(FURTHER, seed + 10 + index, without=frozenset({index})) for index in optional))
