"""The explorer's programme: a short first tour, free ones, one that insists on every room, and for each optional room
one without it and one that insists on it.
"""

import threading
from collections.abc import Sequence

from optimizer.search.board import Board
from optimizer.search.explore import Pool, Tour, explore
from optimizer.search.state import State

FIRST, FREE, FURTHER = 40, 180, 50


def take_first_tour(
    board: Board, pool: Pool, *, seed: int, stop: threading.Event, starts: Sequence[State] = ()
) -> None:
    """A short tour that soon gives something to show, from each layout given or from nothing."""
    for start in (None, *starts):
        explore(board, pool, Tour(FIRST, seed, start=start, thrift=0.6), stop=stop)


def run_tours(board: Board, pool: Pool, *, seed: int, stop: threading.Event) -> None:
    """Run every further tour; a fixed number of rebuilds each, so that the same seed passes the same layouts."""
    for tour in tours_of(board, seed):
        explore(board, pool, tour, stop=stop)


def tours_of(board: Board, seed: int) -> tuple[Tour, ...]:
    """Tours of an instance, in order."""
    optional = [index for index, room in enumerate(board.instance.rooms) if not room.required]
    everything = frozenset(optional)
    free = [
        Tour(FREE, seed + 1, thrift=0.6),
        Tour(FURTHER, seed + 2, thrift=1.2),
        Tour(FREE, seed + 3, insist=everything, thrift=0.5),
        Tour(FREE, seed + 4, insist=everything, thrift=0.65),
        Tour(FURTHER, seed + 5, insist=everything, thrift=0.8),
    ]
    without = [Tour(FURTHER, seed + 10 + index, without=frozenset({index})) for index in optional]
    insist = [Tour(FURTHER, seed + 40 + index, insist=frozenset({index})) for index in optional]
    return (*free, *without, *insist)
