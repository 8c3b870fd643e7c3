"""Which positions of a room keep a relation of sight to another room that stands."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from optimizer.instance import Variant
from optimizer.instance.pairs import View
from optimizer.instance.sight import centres_at, eyes, panel_of, samples, shares
from optimizer.search.board import Board
from optimizer.search.state import Spot

_MOST_KEPT: Final = 500
"""So many tables of shares are kept; a tour comes back to the same few spots."""


@dataclass(frozen=True, slots=True)
class Sides:
    """A room that moves and one that stands, and which of them looks."""

    moving: Variant
    placed: Variant
    spot: Spot
    moving_looks: bool

    @property
    def shown(self) -> Variant:
        """The room that is looked at."""
        return self.placed if self.moving_looks else self.moving


def kept_looks(board: Board, view: View, sides: Sides, asked: np.ndarray) -> np.ndarray:
    """Whether the look is kept at the asked positions, true at all others; shape of the board.

    The site's screens hide, and the panel of a screened room; what else the layout puts between, the judge knows.
    """
    window = np.s_[board.ys[0] : board.ys[-1] + 1, board.xs[0] : board.xs[-1] + 1]
    table = _table(board, view, sides)[window]
    rows, columns = np.nonzero(asked & np.isnan(table))
    if len(rows):
        table[rows, columns] = _shares(board, view, sides, board.xs[columns], board.ys[rows])
    return np.asarray(~asked | view.look.keeps(table))


def _table(board: Board, view: View, sides: Sides) -> np.ndarray:
    """Shares over the whole grid that are known already; NaN where none was asked for."""
    lattice, known = board.instance.context.lattice, board.instance.context.known_shares
    moving, placed = sides.moving, sides.placed
    sizes = (moving.width, moving.depth, placed.width, placed.depth)
    key = (view, sides.moving_looks, sizes, sides.spot.x, sides.spot.y, _has_panel(board, view, sides))
    table = known.get(key)
    if table is None:
        if len(known) >= _MOST_KEPT:
            known.clear()
        table = np.full((lattice.rows, lattice.columns), np.nan)
        known[key] = table
    return table


def _shares(board: Board, view: View, sides: Sides, xs: np.ndarray, ys: np.ndarray) -> np.ndarray:
    context, look, spot = board.instance.context, view.look, sides.spot
    moving = centres_at(context, (sides.moving.width, sides.moving.depth), xs, ys)
    placed = centres_at(context, (sides.placed.width, sides.placed.depth), np.array([spot.x]), np.array([spot.y]))
    looking, seen = (moving, placed) if sides.moving_looks else (placed, moving)
    targets = samples(context, look, seen, (sides.shown.width, sides.shown.depth))
    panel = panel_of(context, look) if _has_panel(board, view, sides) else None
    return shares(context, look, eyes(context, look, looking), targets, panel=panel)


def _has_panel(board: Board, view: View, sides: Sides) -> bool:
    """Whether the room that is looked at has a panel round it."""
    room = next(room for room in board.instance.context.rooms if room.name == view.look.seen)
    return room.choices[sides.shown.choice].is_screened
