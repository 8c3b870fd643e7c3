"""Parallel edges of two rooms that nearly meet: the explorer counts them, the model leaves them out."""

import math
from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations, product
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.fields import NEIGHBOUR_FT, nearly_level
from optimizer.search.board import Board
from optimizer.search.state import Spot, State

Stretch = tuple[int, int]
"""Start and size of a room along one axis, in steps."""
_SLACK: Final = 1e-6


def near_miss_loss(board: Board, state: State) -> int:
    """Loss of all pairs of a state [cents]; near misses with what stands already are in the board's tables."""
    steps = 0
    for (room, one), (other, there) in combinations(_placed(state), 2):
        a, b = _stretches(board, room, one), _stretches(board, other, there)
        for axis in (0, 1):
            beside = _beside(board, a[1 - axis][1], b[1 - axis])
            if beside.start <= a[1 - axis][0] < beside.stop:
                count = sum(a[axis][0] == line for line in _starts(board, a[axis][1], b[axis]))
                steps += count * min(a[1 - axis][1], b[1 - axis][1])
    return steps * board.instance.near_miss_rate


def near_miss_table(board: Board, state: State, room: int, index: int) -> NDArray[np.int64]:
    """Loss with each room that stands, at every position of the variant [cents]; shape (rows, columns)."""
    table = np.zeros((len(board.ys), len(board.xs)), dtype=np.int64)
    a = _stretches(board, room, Spot(index, 0, 0))
    for other, there in _placed(state):
        if other != room:
            b = _stretches(board, other, there)
            rows, columns = (
                _window(board.row, _beside(board, a[1][1], b[1])),
                _window(board.column, _beside(board, a[0][1], b[0])),
            )
            table[rows] += min(a[1][1], b[1][1]) * _counts(board, a[0][1], b[0], board.column, len(board.xs))
            table[:, columns] += (
                min(a[0][1], b[0][1]) * _counts(board, a[1][1], b[1], board.row, len(board.ys))[:, None]
            )
    return table * board.instance.near_miss_rate


def _counts(board: Board, size: int, other: Stretch, first: int, length: int) -> NDArray[np.int64]:
    """How many edges of a room of this size nearly meet another's, by where the room starts."""
    starts = np.fromiter(_starts(board, size, other), dtype=np.int64) - first
    return np.bincount(starts[(starts >= 0) & (starts < length)], minlength=length)


def _placed(state: State) -> list[tuple[int, Spot]]:
    return [(room, spot) for room, spot in enumerate(state) if spot is not None]


def _stretches(board: Board, room: int, spot: Spot) -> tuple[Stretch, Stretch]:
    variant = board.instance.rooms[room].variants[spot.variant]
    return (spot.x, variant.width), (spot.y, variant.depth)


def _starts(board: Board, size: int, other: Stretch) -> Iterator[int]:
    """Starts at which an edge of a room of this size nearly meets one of another, once for each pair that does."""
    for own, line in product((0, size), (other[0], other[0] + other[1])):
        for off in _offs(board.instance.context.lattice.step_ft):
            yield from (line - own - off, line - own + off)


def _beside(board: Board, size: int, other: Stretch) -> range:
    """Starts at which a room of this size overlaps another or ends near it."""
    reach = int(NEIGHBOUR_FT / board.instance.context.lattice.step_ft + _SLACK)
    return range(other[0] - size - reach, other[0] + other[1] + reach + 1)


def _window(first: int, lines: range) -> slice:
    """Grid lines as a slice of an array that begins at the first; empty where they lie before it."""
    return slice(max(0, lines.start - first), max(0, lines.stop - first))


@lru_cache(maxsize=8)
def _offs(step_ft: float) -> tuple[int, ...]:
    """Steps apart at which edges nearly meet."""
    most = math.ceil(NEIGHBOUR_FT / step_ft)
    return tuple(int(off) for off in np.flatnonzero(nearly_level(step_ft * np.arange(most))))
