"""Put one room back at its exact best: all positions and choices at once, with the other rooms where they are."""

from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np

from optimizer.engine.explorer.between import between
from optimizer.engine.explorer.board import Board, Window
from optimizer.engine.explorer.composite import Composite
from optimizer.engine.explorer.limits import Limits, ring_room
from optimizer.engine.explorer.refusals import Refusals
from optimizer.engine.explorer.sight import loss_of_sight, sightings
from optimizer.engine.grid.root_rings import RootRing, taken_sqft
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.pairs.gaps import Steps
from optimizer.engine.pairs.stamp import Cents
from optimizer.engine.problem import Spot, State, rect_of
from optimizer.engine.terms import Rect, Standing

ABSENT_REQUIRED: Final = 10**13
"""Loss of leaving out a room that must be there: more than any layout's, less than what is forbidden."""
_FIRST_ASKED: Final = 32
"""So many of the cheapest places are asked for sight at once, then four times as many."""


@dataclass(frozen=True, slots=True)
class Noise:
    """Up to so many cents drawn for each row and each column, to leave the best now and then."""

    random: np.random.Generator
    cents: int

    def of(self, length: int) -> Cents:
        """Noise of a row of positions."""
        return self.random.integers(0, self.cents + 1, length)


@dataclass(frozen=True, eq=False)
class Insertion:
    """A room that is put in, and what stands round it."""

    board: Board
    state: State
    room: int
    others: list[tuple[int, Spot]]
    standing: Standing
    rings: list[tuple[RootRing, float]]
    refusals: Refusals

    @classmethod
    def of(cls, board: Board, state: State, room: int, refusals: Refusals) -> "Insertion":
        """See what stands, once for all variants."""
        problem = board.problem
        others = [(index, spot) for index, spot in enumerate(state) if spot is not None and index != room]
        standing = Standing.of(problem.order, (rect_of(problem, index, spot) for index, spot in others))
        return cls(board, state, room, others, standing, ring_room(problem, state, room), refusals)

    def best(self, variants: frozenset[int], least: int, *, noise: Noise | None, at: Spot | None) -> Spot | None:
        """Cheapest spot of these variants that costs less than `least`; `at` is one that is tried first."""
        best = None
        if at is not None and at.variant in variants:
            loss = self._loss_at(at)
            best, least = (at, loss) if loss < least else (None, least)
        for v in self.board.by_least[self.room]:
            window = self.board.windows[self.room][v]
            if window is None or window.least - self.standing.loss >= least:
                break  # variants come cheapest first
            if v in variants:
                found = self._cheapest(v, least, noise=noise)
                best, least = (found[1], found[0]) if found else (best, least)
        return best

    def _loss_at(self, spot: Spot) -> int:
        """Loss of one spot, exactly as the table of its variant has it."""
        board, v = self.board, spot.variant
        window, variant = board.windows[self.room][v], board.problem.rooms[self.room].variants[v]
        here = (self.room, spot)
        loss = FORBIDDEN if window is None else window.at(spot)
        loss += sum(between(board, here, there) for there in self.others)
        if loss >= FORBIDDEN or self.refusals.strikes(board.problem, self.state, self.room, spot):
            return FORBIDDEN
        for ring, room_sqft in self.rings:
            if taken_sqft(ring, variant.width, variant.depth, variant.is_round)[spot.y, spot.x] > room_sqft:
                return FORBIDDEN
        rect = Rect(spot.x, spot.y, variant.width, variant.depth, variant.is_round)
        return loss + self.standing.loss_added(rect)

    def _cheapest(self, v: int, least: int, *, noise: Noise | None) -> tuple[int, Spot] | None:
        """Loss and spot of the cheapest place of a variant below `least`."""
        window = self.board.windows[self.room][v]
        assert window is not None
        stamps = [(self.board.stamp(self.room, v, other, spot.variant), spot) for other, spot in self.others]
        area = _area(window, stamps)
        strip = None if area is None else self._strip(v, stamps, area, noise).below(least, window)
        return None if strip is None else self._seen(self._table(v, window, stamps, strip), v, least, strip)

    def _strip(self, v: int, stamps: "Stamps", area: "Area", noise: Noise | None) -> "Strip":
        """What the place along x and the place along y cost by themselves."""
        x, y = (np.zeros(end - start, dtype=np.int64) for start, end in (area.columns, area.rows))
        for stamp, spot in stamps:
            right = area.columns[0] - spot.x + len(stamp.along_x) // 2
            up = area.rows[0] - spot.y + len(stamp.along_y) // 2
            x += stamp.along_x[right : right + len(x)]
            y += stamp.along_y[up : up + len(y)]
        if noise is not None:
            x += noise.of(len(x))
            y += noise.of(len(y))
        variant, order = self.board.problem.rooms[self.room].variants[v], self.standing.order
        if variant.is_round:
            return Strip(self.standing, 0, area.rows[0], area.columns[0], x, y, np.zeros_like(x), np.zeros_like(y))
        added_x = self.standing.added(0, area.columns[0], len(x), size=variant.width, length=variant.depth)
        added_y = self.standing.added(1, area.rows[0], len(y), size=variant.depth, length=variant.width)
        x += order.rate * added_x
        y += order.rate * added_y
        length = 2 * (variant.width + variant.depth)
        return Strip(self.standing, length, area.rows[0], area.columns[0], x, y, added_x, added_y)

    def _table(self, v: int, window: Window, stamps: "Stamps", strip: "Strip") -> Cents:
        """Loss of every place of a strip."""
        row, column = strip.row - window.row, strip.column - window.column
        rows, columns = len(strip.y), len(strip.x)
        table = window.table[row : row + rows, column : column + columns] + strip.losses()
        for stamp, spot in stamps:
            table += stamp.far
            stamp.add_patch(table, strip.column - spot.x, strip.row - spot.y)
        shape = self.board.problem.rooms[self.room].variants[v].shape
        for ring, room_sqft in self.rings:
            taken = taken_sqft(ring, shape.width, shape.depth, shape.is_round)
            table[taken[strip.row : strip.row + rows, strip.column : strip.column + columns] > room_sqft] = FORBIDDEN
        self.refusals.strike(self.board, self.state, self.room, shape, table, row=strip.row, column=strip.column)
        return table

    def _seen(self, table: Cents, v: int, least: int, strip: "Strip") -> tuple[int, Spot] | None:
        """The cheapest place with its looks; they are asked of the cheapest places until none could be cheaper."""
        flat, looks = table.ravel(), sightings(self.board.problem, self.room, v, self.others)
        asked = np.zeros(flat.shape, dtype=bool) if looks else None
        count = _FIRST_ASKED
        while True:
            at = int(flat.argmin())
            if flat[at] >= min(least, FORBIDDEN):
                return None
            row, column = divmod(at, table.shape[1])
            if asked is None or asked[at]:
                return int(flat[at]), Spot(v, column + strip.column, row + strip.row)
            fresh = np.where(asked, FORBIDDEN, flat)
            cells = np.argpartition(fresh, min(count, len(fresh) - 1))[:count]
            rows, columns = np.divmod(cells, table.shape[1])
            for look in looks:
                loss = loss_of_sight(self.board.problem, look, columns + strip.column, rows + strip.row)
                flat[cells] += np.where(asked[cells], 0, loss)
            asked[cells] = True
            count *= 4


Stamps = list[tuple[Composite, Spot]]
"""What each room that stands does to the one that is put in, and where it stands."""


class Area(NamedTuple):
    """Rows and columns of the grid, each from the first up to before the last."""

    rows: tuple[int, int]
    columns: tuple[int, int]


@dataclass(frozen=True, slots=True, eq=False)
class Strip:
    """Places from the corner at (`column`, `row`) on: cents by column and by row, and steps of edge on no line, which
    are in the cents at their plain rate.

    `length` is the length of all edges of the room that is put in.
    """

    standing: Standing
    length: int
    row: int
    column: int
    x: Cents
    y: Cents
    added_x: Steps
    added_y: Steps

    def below(self, least: int, window: Window) -> "Strip | None":
        """The part outside of which nothing costs less than `least`; None where nothing does."""
        further = int(self.standing.disorder_added(self.added_x.min() + self.added_y.min(), self.length))
        row, column = self.row - window.row, self.column - window.column
        level, upright = self.y + (self.x.min() + further), self.x + (self.y.min() + further)
        rows = (window.row_least[row : row + len(level)] + level < least).nonzero()[0]
        columns = (window.column_least[column : column + len(upright)] + upright < least).nonzero()[0]
        if not len(rows) or not len(columns):
            return None
        low, high, left, right = int(rows[0]), int(rows[-1]) + 1, int(columns[0]), int(columns[-1]) + 1
        x, y, added_x, added_y = self.x[left:right], self.y[low:high], self.added_x[left:right], self.added_y[low:high]
        return Strip(self.standing, self.length, self.row + low, self.column + left, x, y, added_x, added_y)

    def losses(self) -> Cents:
        """What the two places and the order of edges cost together."""
        losses = self.x[None, :] + self.y[:, None]
        if self.standing.order.disorder_rate:
            losses += self.standing.disorder_added(self.added_y[:, None] + self.added_x[None, :], self.length)
        return losses


def _area(window: Window, stamps: Stamps) -> Area | None:
    """Where the room may stand at all: in its window, and as close as rooms that stand ask it to be."""
    rows, columns = window.table.shape
    low, high, left, right = window.row, window.row + rows, window.column, window.column + columns
    for stamp, spot in stamps:
        if stamp.is_shut_outside:
            rows, columns = stamp.patch.shape
            low, high = max(low, spot.y + stamp.up), min(high, spot.y + stamp.up + rows)
            left, right = max(left, spot.x + stamp.right), min(right, spot.x + stamp.right + columns)
    return Area((low, high), (left, right)) if low < high and left < right else None


def best_spot(
    board: Board,
    limits: Limits,
    state: State,
    room: int,
    *,
    refusals: Refusals,
    noise: Noise | None = None,
    at: Spot | None = None,
) -> Spot | None:
    """Best spot of the room, or None where leaving it out is better (or nothing is allowed)."""
    variants, may_lack = limits.left_for(state, room)
    least = board.problem.rooms[room].absent_loss if may_lack else ABSENT_REQUIRED
    return Insertion.of(board, state, room, refusals).best(variants, least, noise=noise, at=at) if variants else None
