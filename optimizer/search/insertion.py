"""Put one room back at its exact best: all positions and choices at once, with the other rooms where they are."""

import numpy as np

from optimizer.instance import Variant
from optimizer.search.board import FORBIDDEN, Board
from optimizer.search.limits import can_give, paved_left, strike_out_rings
from optimizer.search.near_misses import near_miss_table
from optimizer.search.order import order_table
from optimizer.search.pair_masks import Table, strike_out
from optimizer.search.state import Spot, State

ABSENT_REQUIRED = 10**9


def best_spot(
    board: Board, state: State, room: int, *, noise: np.random.Generator | None = None, noise_cents: int = 0
) -> Spot | None:
    """Best spot of the room, or None where leaving it out is better (or nothing is allowed)."""
    data = board.instance.rooms[room]
    wanted = data.required or not can_give(board, state, room, None)
    best, best_loss = None, ABSENT_REQUIRED if wanted else data.absent_loss
    left, ground = _cents_left(board, state, room), paved_left(board, state, room)
    for index, variant in enumerate(data.variants):
        if left is not None and variant.likely_cost > left:
            continue
        if ground is not None and board.instance.paved_cells(room, index) > ground:
            continue
        if not can_give(board, state, room, index):
            continue
        table = losses_of(board, state, room, index)
        if noise is not None:
            table += noise.integers(0, noise_cents + 1, len(board.xs))[None, :]
            table += noise.integers(0, noise_cents + 1, len(board.ys))[:, None]
        at = int(table.argmin())
        if table.flat[at] < min(best_loss, FORBIDDEN // 2):
            best_loss = int(table.flat[at])
            row, column = divmod(at, table.shape[1])
            best = Spot(index, column + board.column, row + board.row)
    return best


def losses_of(board: Board, state: State, room: int, index: int) -> Table:
    """Loss of the whole layout at every position of the variant, up to what does not depend on it."""
    variant = board.instance.rooms[room].variants[index]
    pulled_x, pulled_y = _pulled(board, state, room, variant)
    table: Table = board.tables[room][index] + order_table(board, state, room, index)
    table += near_miss_table(board, state, room, index) + pulled_x[None, :] + pulled_y[:, None]
    for other, spot in enumerate(state):
        if spot is not None and other != room:
            table = strike_out(board, table, room=room, variant=variant, other=other, spot=spot)
    return strike_out_rings(board, state, room, variant, table)


def _pulled(board: Board, state: State, room: int, variant: Variant) -> tuple[np.ndarray, np.ndarray]:
    x = np.zeros(len(board.xs), dtype=np.int64)
    y = np.zeros(len(board.ys), dtype=np.int64)
    for pull in board.pulls[room]:
        other = pull.room if pull.other == room else pull.other
        spot = None if other is None else state[other]
        if other is not None and spot is not None:
            anchor = board.instance.rooms[other].variants[spot.variant].anchor
            x += pull.rate * np.abs(2 * board.xs + variant.anchor[0] - 2 * spot.x - anchor[0])
            y += pull.rate * np.abs(2 * board.ys + variant.anchor[1] - 2 * spot.y - anchor[1])
    return x, y


def _cents_left(board: Board, state: State, room: int) -> int | None:
    """Money for the room, with the least that each required room still to be placed will take kept back."""
    if board.instance.spendable is None:
        return None
    others = tuple(None if index == room else spot for index, spot in enumerate(state))
    waiting = sum(
        min((variant.likely_cost for variant in data.variants), default=0)
        for index, data in enumerate(board.instance.rooms)
        if data.required and others[index] is None and index != room
    )
    return board.instance.spendable - likely_cost_of(board, others) - waiting


def likely_cost_of(board: Board, state: State) -> int:
    """Phase 1 cost of the rooms in a state with an estimate of their runs [cents]: a guide, no floor."""
    return sum(
        board.instance.rooms[room].variants[spot.variant].likely_cost
        for room, spot in enumerate(state)
        if spot is not None
    )


def cost_of(board: Board, state: State) -> int:
    """Least phase 1 cost of the rooms in a state [cents]."""
    return sum(
        board.instance.rooms[room].variants[spot.variant].cost for room, spot in enumerate(state) if spot is not None
    )
