"""The order loss: room edges that lie on no line shared with a wall, a structure or another room."""

import numpy as np
from numpy.typing import NDArray

from optimizer.fields import FREE_PART
from optimizer.instance import Variant
from optimizer.search.board import Board
from optimizer.search.state import Spot, State

Edges = list[tuple[int, int, int]]
"""(room, line, length) of every room edge across one axis."""
Steps = NDArray[np.int64]


def edges_across(board: Board, state: State, axis: int) -> Edges:
    """Edges of all placed rooms that lie on lines of constant x (axis 0) or y (axis 1)."""
    edges = []
    for room, spot in enumerate(state):
        if spot is not None:
            variant = board.instance.rooms[room].variants[spot.variant]
            start, size, length = _extent(variant, spot, axis)
            edges += [(room, start, length), (room, start + size, length)]
    return edges


def order_loss(board: Board, state: State) -> int:
    """Loss of a whole state [cents]."""
    unaligned, length = _unaligned(board, state), _length(board, state)
    return board.instance.order_rate * unaligned + int(_disorder(board, np.int64(unaligned), length))


def order_table(board: Board, state: State, room: int, index: int) -> Steps:
    """What a variant that is put in adds to the loss at every position [cents], less what it spares others; shape
    (rows, columns).
    """
    variant = board.instance.rooms[room].variants[index]
    others = tuple(None if number == room else spot for number, spot in enumerate(state))
    before, length = _unaligned(board, others), _length(board, others)
    added = _added(board, others, 1, variant)[:, None] + _added(board, others, 0, variant)[None, :]
    disorder = _disorder(board, before + added, length + 2 * (variant.width + variant.depth))
    return board.instance.order_rate * added + disorder - _disorder(board, np.int64(before), length)


def _unaligned(board: Board, state: State) -> int:
    """Steps of room edge that lie on no shared line."""
    steps = 0
    for axis, fixed in ((0, board.instance.lines_x), (1, board.instance.lines_y)):
        edges = edges_across(board, state, axis)
        for room, line, length in edges:
            if line not in fixed and not any(line == other and room != owner for owner, other, _ in edges):
                steps += length
    return steps


def _length(board: Board, state: State) -> int:
    """Steps of all room edges."""
    return sum(length for axis in (0, 1) for _, _, length in edges_across(board, state, axis))


def _disorder(board: Board, unaligned: Steps | np.int64, length: int) -> Steps:
    """Further loss of what lies on no shared line beyond the part that may."""
    return np.asarray(board.instance.disorder_rate * np.maximum(0, FREE_PART * unaligned - length))


def _added(board: Board, others: State, axis: int, variant: Variant) -> Steps:
    """Steps on no shared line by a room's position along an axis, less those that it spares others."""
    first, count = (board.column, len(board.xs)) if axis == 0 else (board.row, len(board.ys))
    size, length = (variant.width, variant.depth) if axis == 0 else (variant.depth, variant.width)
    fixed = set(board.instance.lines_x if axis == 0 else board.instance.lines_y)
    edges = edges_across(board, others, axis)
    shared = np.zeros(count + size, dtype=np.int64)
    for line in fixed.union(line for _, line, _ in edges):
        if first <= line < first + count + size:
            shared[line - first] = 1
    steps = length * (2 - shared[:count] - shared[size:])
    for owner, line, spared in edges:
        alone = line not in fixed and not any(line == o and owner != w for w, o, _ in edges)
        for start in (line - first, line - size - first):
            if alone and 0 <= start < count:
                steps[start] -= spared
    return steps


def _extent(variant: Variant, spot: Spot, axis: int) -> tuple[int, int, int]:
    if axis == 0:
        return spot.x, variant.width, variant.depth
    return spot.y, variant.depth, variant.width
