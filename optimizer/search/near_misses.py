"""Parallel edges of two rooms that nearly meet: the explorer counts them, the model leaves them out."""

from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from optimizer.fields import are_neighbours, nearly_level
from optimizer.instance import Variant
from optimizer.search.board import Board
from optimizer.search.state import Spot, State

Numbers = NDArray[np.int64]


def near_miss_loss(board: Board, state: State) -> int:
    """Loss of all pairs of a state [cents]; near misses with what stands already are in the board's tables."""
    placed = [(room, spot) for room, spot in enumerate(state) if spot is not None]
    return sum(
        int(_missed(board, _variant(board, room, one), np.array([one.x]), np.array([one.y]), other, there)[0, 0])
        for (room, one), (other, there) in combinations(placed, 2)
    )


def near_miss_table(board: Board, state: State, room: int, variant: Variant) -> Numbers:
    """Loss with each room that stands, at every position of the variant [cents]; shape (rows, columns)."""
    table = np.zeros((len(board.ys), len(board.xs)), dtype=np.int64)
    for other, spot in enumerate(state):
        if spot is not None and other != room:
            table += _missed(board, variant, board.xs, board.ys, other, spot)
    return table


def _missed(board: Board, variant: Variant, xs: Numbers, ys: Numbers, other: int, spot: Spot) -> Numbers:
    there, step_ft = _variant(board, other, spot), board.instance.context.lattice.step_ft
    x = (xs, variant.width, spot.x, there.width)
    y = (ys, variant.depth, spot.y, there.depth)
    upright = min(variant.depth, there.depth) * np.outer(_near(*y, step_ft), _misses(*x, step_ft))
    level = min(variant.width, there.width) * np.outer(_misses(*y, step_ft), _near(*x, step_ft))
    return np.asarray(board.instance.near_miss_rate * (upright + level))


def _misses(starts: Numbers, size: int, other: int, other_size: int, step_ft: float) -> Numbers:
    """How many of the four pairs of edges across one axis nearly meet, at each start."""
    offs = np.array([0, size])[:, None] - np.array([other, other + other_size])[None, :]
    return np.asarray(nearly_level(step_ft * (starts[:, None] + offs.ravel())).sum(axis=1))


def _near(starts: Numbers, size: int, other: int, other_size: int, step_ft: float) -> Numbers:
    found = are_neighbours(step_ft * starts, step_ft * (starts + size), step_ft * other, step_ft * (other + other_size))
    return found.astype(np.int64)


def _variant(board: Board, room: int, spot: Spot) -> Variant:
    return board.instance.rooms[room].variants[spot.variant]
