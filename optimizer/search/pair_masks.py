"""What a placed room forbids another: positions struck out of the table of losses."""

from typing import Any

import numpy as np

from optimizer.instance import Pair, Variant
from optimizer.instance.pairs import View
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.search.board import FORBIDDEN, Board
from optimizer.search.sight import Sides, kept_looks
from optimizer.search.state import Spot

Table = np.ndarray


def strike_out(board: Board, table: Table, *, room: int, variant: Variant, other: int, spot: Spot) -> Table:
    """The table with every position forbidden at which the room breaks its pair's rules with the other, and with the
    losses of wishes that are not kept.
    """
    pair = board.pairs[room][other]
    if pair is None:
        return table
    placed = board.instance.rooms[other].variants[spot.variant]
    view = Relative(board, pair, variant, placed, spot, first=pair.first == room)
    table = _only_touching(view, table) if pair.must_touch else _clear_or_touching(view, table)
    _strike_distances(view, table)
    _strike_fronts(view, table)
    _strike_views(view, table)
    _charge_wishes(view, table)
    return table


class Relative:
    """Positions of the moving room seen from the placed one: gaps along x and y, and where they touch."""

    def __init__(self, board: Board, pair: Pair, moving: Variant, placed: Variant, spot: Spot, *, first: bool) -> None:
        self.board, self.pair, self.moving, self.placed, self.spot = board, pair, moving, placed, spot
        self.ends = {0: moving, 1: placed} if first else {0: placed, 1: moving}
        self.moving_end = 0 if first else 1
        x, y = board.xs, board.ys
        self.left = spot.x - moving.width - x
        """Gap with the moving room on the left of the placed one; below 0 where it is not."""
        self.right = x - spot.x - placed.width
        self.below = spot.y - moving.depth - y
        self.above = y - spot.y - placed.depth
        self.gap_x = np.maximum(self.left, self.right)
        self.gap_y = np.maximum(self.below, self.above)

    def touching(self, share: int) -> list[Any]:
        """Index ranges (rows, columns) of positions that share `share` steps of edge, on sides that may be touched."""
        low_y, high_y = self.spot.y - self.moving.depth + share, self.spot.y + self.placed.depth - share
        low_x, high_x = self.spot.x - self.moving.width + share, self.spot.x + self.placed.width - share
        rows, columns = self._range(low_y, high_y, self.board.row), self._range(low_x, high_x, self.board.column)
        places = {
            (-1, 0): (rows, self._index(self.spot.x - self.moving.width, self.board.column, len(self.board.xs))),
            (1, 0): (rows, self._index(self.spot.x + self.placed.width, self.board.column, len(self.board.xs))),
            (0, -1): (self._index(self.spot.y - self.moving.depth, self.board.row, len(self.board.ys)), columns),
            (0, 1): (self._index(self.spot.y + self.placed.depth, self.board.row, len(self.board.ys)), columns),
        }
        return [place for side, place in places.items() if None not in place and self._may_touch(side)]

    def _may_touch(self, side: tuple[int, int]) -> bool:
        """Whether the moving room may lie flush on this side of the placed one, as seen from the placed one."""
        for end in self.pair.open_ends:
            variant = self.ends[end]
            outwards = side if end != self.moving_end else (-side[0], -side[1])
            if variant.front is not None and FRONT_VECTORS[variant.front] == outwards:
                return False
        return True

    @staticmethod
    def _range(low: int, high: int, start: int) -> slice:
        return slice(max(0, low - start), max(0, high - start + 1))

    @staticmethod
    def _index(at: int, start: int, length: int) -> int | None:
        return at - start if 0 <= at - start < length else None


def _only_touching(view: Relative, table: Table) -> Table:
    share = max(view.pair.touch_share, 1)
    result = np.full_like(table, FORBIDDEN)
    for place in view.touching(share):
        result[place] = table[place]
    return result


def _clear_or_touching(view: Relative, table: Table) -> Table:
    pair = view.pair
    gap = pair.gap or (0 if not pair.may_overlap else None)
    if gap is None:
        return table
    kept: list[tuple[Any, Table]] = (
        [(place, table[place].copy()) for place in view.touching(max(pair.share, 1))] if pair.gap else []
    )
    near = np.ix_(view.gap_y < gap, view.gap_x < gap)
    if pair.may_overlap:
        inside = np.ix_(view.gap_y < 0, view.gap_x < 0)
        kept.append((inside, table[inside].copy()))
    table[near] = FORBIDDEN
    for place, values in kept:
        table[place] = values
    return table


def _strike_distances(view: Relative, table: Table) -> None:
    if view.pair.apart_ft > 0:
        table[~_farther(view, view.pair.apart_ft)] = FORBIDDEN
    if view.pair.cover_apart_ft > 0 and view.ends[view.pair.cover_end].covered:
        table[~_farther(view, view.pair.cover_apart_ft)] = FORBIDDEN
    if view.pair.near_ft is not None:
        table[~_within(view, view.pair.near_ft)] = FORBIDDEN


def _squared_ft(view: Relative) -> np.ndarray:
    step = view.board.instance.context.lattice.step_ft
    x, y = np.maximum(view.gap_x, 0) * step, np.maximum(view.gap_y, 0) * step
    return np.asarray((x * x)[None, :] + (y * y)[:, None])


def _farther(view: Relative, distance_ft: float) -> np.ndarray:
    return np.asarray(_squared_ft(view) >= (distance_ft - 1e-6) ** 2)


def _within(view: Relative, distance_ft: float) -> np.ndarray:
    return np.asarray(_squared_ft(view) <= (distance_ft + 1e-6) ** 2)


def facing(view: Relative, end: int) -> np.ndarray:
    """Positions at which the room at that end opens towards the other."""
    front = view.ends[end].front
    everywhere = np.ones((len(view.board.ys), len(view.board.xs)), dtype=bool)
    if front is None:
        return everywhere
    dx, dy = FRONT_VECTORS[front]
    moving = end == view.moving_end
    # With the moving room opening to +x, the placed one lies on its right: the moving one is on the left of it.
    beyond = {
        (1, 0): view.left if moving else view.right,
        (-1, 0): view.right if moving else view.left,
        (0, 1): view.below if moving else view.above,
        (0, -1): view.above if moving else view.below,
    }[dx, dy]
    if dx:
        return np.asarray((beyond >= 0)[None, :] & (view.gap_y < 0)[:, None])
    return np.asarray((beyond >= 0)[:, None] & (view.gap_x < 0)[None, :])


def _strike_fronts(view: Relative, table: Table) -> None:
    for end in view.pair.faces:
        table[~facing(view, end)] = FORBIDDEN
    for end in view.pair.ahead:
        table[~_ahead(view, end)] = FORBIDDEN


def _ahead(view: Relative, end: int) -> np.ndarray:
    """Positions at which the middle of the other room lies before the counter of the room at that end."""
    front = view.ends[end].front
    if front is None:
        return np.ones((len(view.board.ys), len(view.board.xs)), dtype=bool)
    dx, dy = FRONT_VECTORS[front]
    sense = -1 if end == view.moving_end else 1
    away_x = 2 * view.board.xs + view.moving.width - 2 * view.spot.x - view.placed.width
    away_y = 2 * view.board.ys + view.moving.depth - 2 * view.spot.y - view.placed.depth
    return np.asarray(sense * (dx * away_x[None, :] + dy * away_y[:, None]) >= view.ends[end].counter_ahead)


def _strike_views(view: Relative, table: Table) -> None:
    for look in view.pair.views:
        table[~_sees(view, look, table)] = FORBIDDEN


def _sees(view: Relative, look: View, table: Table) -> np.ndarray:
    """Positions that keep a look between the two, of those that are still allowed."""
    sides = Sides(view.moving, view.placed, view.spot, moving_looks=look.looks == view.moving_end)
    return kept_looks(view.board, look, sides, table < FORBIDDEN)


def _charge_wishes(view: Relative, table: Table) -> None:
    for wish in view.pair.wishes:
        if wish.asks == "near":
            kept = _within(view, wish.amount_ft)
        elif wish.asks == "apart":
            kept = _farther(view, wish.amount_ft)
        elif wish.asks == "faces":
            kept = facing(view, wish.opens)
        elif wish.asks == "touching":
            kept = np.zeros(table.shape, dtype=bool)
            for place in view.touching(max(1, round(wish.amount_ft / view.board.instance.context.lattice.step_ft))):
                kept[place] = True
        elif wish.view is not None:
            kept = _sees(view, wish.view, table)
        table[~kept] += wish.loss
