"""The instance laid out for fast insertion: one table of losses a variant, cropped to where rooms may stand."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.instance import Instance, Losses, Pair, Pull

FORBIDDEN: Final = 10**11
"""Loss of a position where the room may not stand; sums of a few stay far inside 64 bits."""


@dataclass(frozen=True)
class Board:
    """`tables[room][variant]` holds every loss that does not depend on other rooms, over the window that starts at
    (`row`, `column`) of the grid; `pulls[room]` the walking between it and other rooms.
    """

    instance: Instance
    row: int
    column: int
    tables: tuple[tuple[Losses, ...], ...]
    pulls: tuple[tuple[Pull, ...], ...]
    pairs: tuple[tuple[Pair | None, ...], ...]
    xs: NDArray[np.int64]
    ys: NDArray[np.int64]


def board_of(instance: Instance) -> Board:
    """Lay an instance out for the explorer."""
    row, last_row, column, last_column = _window(instance)
    ys, xs = np.arange(row, last_row + 1), np.arange(column, last_column + 1)
    count = len(instance.rooms)
    tables = tuple(
        tuple(_table(instance, index, v, ys, xs) for v in range(len(room.variants)))
        for index, room in enumerate(instance.rooms)
    )
    return Board(
        instance,
        row,
        column,
        tables,
        tuple(tuple(p for p in instance.pulls if p.other is not None and i in (p.room, p.other)) for i in range(count)),
        tuple(tuple(instance.pair(i, j) if i != j else None for j in range(count)) for i in range(count)),
        xs,
        ys,
    )


def thrifty(board: Board, share: float) -> Board:
    """The board with less money for rooms: this share of the estimated ways is set aside.

    What the explorer sets aside only guides it: the exact ceiling is the judge's, and no proof rests on an estimate.
    """
    spendable, estimate = board.instance.spendable, board.instance.ways_estimate
    if spendable is None:
        return board
    return replace(board, instance=replace(board.instance, spendable=max(0, spendable - round(share * estimate))))


def insisting(board: Board, rooms: frozenset[int]) -> Board:
    """The board with these rooms required."""
    changed = tuple(
        replace(room, required=True) if index in rooms else room for index, room in enumerate(board.instance.rooms)
    )
    return replace(board, instance=replace(board.instance, rooms=changed))


def _window(instance: Instance) -> tuple[int, int, int, int]:
    anywhere = np.logical_or.reduce(
        [cells for room in instance.rooms for cells in room.allowed] or [np.ones((1, 1), dtype=bool)]
    )
    rows, columns = np.flatnonzero(anywhere.any(axis=1)), np.flatnonzero(anywhere.any(axis=0))
    if not len(rows):
        return 0, 0, 0, 0
    return int(rows[0]), int(rows[-1]), int(columns[0]), int(columns[-1])


def _table(instance: Instance, room: int, index: int, ys: NDArray[np.int64], xs: NDArray[np.int64]) -> Losses:
    data, variant = instance.rooms[room], instance.rooms[room].variants[index]
    window = np.ix_(ys, xs)
    losses = data.losses[index][window] + variant.loss
    if data.near_misses:
        losses = losses + data.near_misses[index][window]
    table = np.where(data.allowed[index][window], losses, FORBIDDEN)
    for pull in instance.pulls:
        if pull.room == room and pull.at is not None:
            table += pull.rate * np.abs(2 * xs + variant.anchor[0] - pull.at[0])[None, :]
            table += pull.rate * np.abs(2 * ys + variant.anchor[1] - pull.at[1])[:, None]
    return np.asarray(table, dtype=np.int64)
