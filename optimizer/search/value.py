"""The objective of a state, term by term, exactly as the model counts it, and edges that nearly meet besides."""

from itertools import combinations

import numpy as np

from optimizer.search.board import FORBIDDEN, Board
from optimizer.search.insertion import ABSENT_REQUIRED, cost_of
from optimizer.search.limits import keeps_limits
from optimizer.search.near_misses import near_miss_loss
from optimizer.search.order import order_loss
from optimizer.search.pair_masks import strike_out
from optimizer.search.state import State


def value_of(board: Board, state: State) -> int:
    """What the explorer counts [cents]; FORBIDDEN or more where a rule of the model is broken."""
    instance = board.instance
    if instance.spendable is not None and cost_of(board, state) > instance.spendable:
        return FORBIDDEN
    if not keeps_limits(board, state):
        return FORBIDDEN
    total = order_loss(board, state) + near_miss_loss(board, state)
    for room, spot in enumerate(state):
        data = instance.rooms[room]
        if spot is None:
            total += ABSENT_REQUIRED if data.required else data.absent_loss
        else:
            total += int(board.tables[room][spot.variant][spot.y - board.row, spot.x - board.column])
    return total + _pulls(board, state) + _pairs(board, state)


def modelled_value_of(board: Board, state: State) -> int:
    """Objective as the model counts it, without edges that nearly meet [cents]: a proof can speak of nothing else."""
    on_site = sum(
        int(board.instance.rooms[room].near_misses[spot.variant][spot.y, spot.x])
        for room, spot in enumerate(state)
        if spot is not None and board.instance.rooms[room].near_misses
    )
    return value_of(board, state) - near_miss_loss(board, state) - on_site


def _pulls(board: Board, state: State) -> int:
    total = 0
    for pull in board.instance.pulls:
        if pull.other is None:
            continue
        one, other = state[pull.room], state[pull.other]
        if one is not None and other is not None:
            a = board.instance.rooms[pull.room].variants[one.variant].anchor
            b = board.instance.rooms[pull.other].variants[other.variant].anchor
            dx = abs(2 * one.x + a[0] - 2 * other.x - b[0])
            total += pull.rate * (dx + abs(2 * one.y + a[1] - 2 * other.y - b[1]))
    return total


def _pairs(board: Board, state: State) -> int:
    """Losses between rooms: each pair asked at the one position, through the same rules as an insertion."""
    total = 0
    for one, other in combinations(range(len(state)), 2):
        here, there = state[one], state[other]
        if here is None or there is None or board.pairs[one][other] is None:
            continue
        single = Board(
            board.instance,
            here.y,
            here.x,
            board.tables,
            board.pulls,
            board.pairs,
            np.array([here.x]),
            np.array([here.y]),
        )
        table = np.zeros((1, 1), dtype=np.int64)
        variant = board.instance.rooms[one].variants[here.variant]
        total += int(strike_out(single, table, room=one, variant=variant, other=other, spot=there)[0, 0])
    return total
