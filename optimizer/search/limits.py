"""Limits that rooms share: the paved share of the yard, the rings round kept trees, and what guests need."""

from collections.abc import Iterator

import numpy as np

from optimizer.instance import Variant
from optimizer.instance.party_needs import Need
from optimizer.instance.root_rings import RootRing, taken_sqft
from optimizer.search.board import FORBIDDEN, Board
from optimizer.search.pair_masks import Table
from optimizer.search.state import State


def paved_left(board: Board, state: State, room: int) -> int | None:
    """Cells that the room may pave, with the other rooms where they are; None without a limit."""
    if board.instance.pavable_cells is None:
        return None
    others = ((index, spot) for index, spot in enumerate(state) if spot is not None and index != room)
    return board.instance.pavable_cells - sum(board.instance.paved_cells(i, spot.variant) for i, spot in others)


def strike_out_rings(board: Board, state: State, room: int, variant: Variant, table: Table) -> Table:
    """The table without positions at which the rooms together take more of a tree's ring than they may."""
    if not board.instance.rings or not _built(board, room):
        return table
    for ring in board.instance.rings:
        left = ring.most_sqft - _taken(board, ring, state, without=room)
        window = taken_sqft(ring, variant.width, variant.depth)[np.ix_(board.ys, board.xs)]
        table = np.where(window <= left, table, FORBIDDEN)
    return table


def keeps_limits(board: Board, state: State) -> bool:
    """Whether the rooms of a state keep all limits."""
    left = paved_left(board, state, room=-1)
    rings = all(_taken(board, ring, state) <= ring.most_sqft for ring in board.instance.rings)
    given = all(sum(_given(need, state)) >= need.least for need in board.instance.needs)
    return rings and given and (left is None or left >= 0)


def can_give(board: Board, state: State, room: int, variant: int | None) -> bool:
    """Whether guests can still get what they need, once the room takes this variant, or None.

    Rooms that stand give what they give; of those that are still away each is trusted with the most it could.
    """
    for need in board.instance.needs:
        others = (
            need.most(index) if spot is None else need.gives[index][spot.variant]
            for index, spot in enumerate(state)
            if index != room
        )
        own = 0 if variant is None else need.gives[room][variant]
        if sum(others) + own < need.least:
            return False
    return True


def _given(need: Need, state: State) -> Iterator[int]:
    return (need.gives[room][spot.variant] for room, spot in enumerate(state) if spot is not None)


def _taken(board: Board, ring: RootRing, state: State, *, without: int = -1) -> float:
    """What the built rooms take of a ring [sq ft]."""
    total = 0.0
    for room, spot in enumerate(state):
        if spot is not None and room != without and _built(board, room):
            variant = board.instance.rooms[room].variants[spot.variant]
            total += float(taken_sqft(ring, variant.width, variant.depth)[spot.y, spot.x])
    return total


def _built(board: Board, room: int) -> bool:
    return bool(board.instance.context.rooms[room].rules.built_as)
