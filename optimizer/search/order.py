"""The order loss: room edges that lie on no line shared with a wall, a structure or another room."""

import numpy as np
from numpy.typing import NDArray

from optimizer.instance import Variant
from optimizer.search.board import Board
from optimizer.search.state import Spot, State

Edges = list[tuple[int, int, int]]
"""(room, line, length) of every room edge across one axis."""


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
    loss = 0
    for axis, fixed in ((0, board.instance.lines_x), (1, board.instance.lines_y)):
        edges = edges_across(board, state, axis)
        for room, line, length in edges:
            if line not in fixed and not any(line == other and room != owner for owner, other, _ in edges):
                loss += length
    return loss * board.instance.order_rate


def order_vectors(
    board: Board, state: State, room: int, variant: Variant
) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Order loss by x and by y of a room that is put in, less what it spares others: shapes (columns,) and (rows,)."""
    return (
        _vector(board, edges_across(board, state, 0), 0, variant, room),
        _vector(board, edges_across(board, state, 1), 1, variant, room),
    )


def _vector(board: Board, edges: Edges, axis: int, variant: Variant, room: int) -> NDArray[np.int64]:
    ordinates = board.xs if axis == 0 else board.ys
    size, length = (variant.width, variant.depth) if axis == 0 else (variant.depth, variant.width)
    fixed = set(board.instance.lines_x if axis == 0 else board.instance.lines_y)
    others = [edge for edge in edges if edge[0] != room]
    lines = sorted(fixed | {line for _, line, _ in others})
    loss = length * (~np.isin(ordinates, lines)).astype(np.int64)
    loss += length * (~np.isin(ordinates + size, lines)).astype(np.int64)
    for owner, line, spared in others:
        alone = line not in fixed and not any(line == o and owner != w for w, o, _ in others)
        if alone:
            loss -= spared * ((ordinates == line) | (ordinates + size == line)).astype(np.int64)
    return loss * board.instance.order_rate


def _extent(variant: Variant, spot: Spot, axis: int) -> tuple[int, int, int]:
    if axis == 0:
        return spot.x, variant.width, variant.depth
    return spot.y, variant.depth, variant.width
