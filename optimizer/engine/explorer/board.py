"""The problem laid out for fast insertion: one table of losses a variant, cropped to where it may stand."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.explorer.composite import Composite
from optimizer.engine.explorer.ground import Ground
from optimizer.engine.explorer.residuals import at_blocks
from optimizer.engine.explorer.stamps import Stamps
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.pairs.stamp import Cents
from optimizer.engine.problem import Problem, ProblemRoom, Spot, State

if TYPE_CHECKING:
    from optimizer.engine.grid.variants import Shape


@dataclass(frozen=True, eq=False)
class Window:
    """Losses of a variant that do not depend on other rooms, from the corner at (`column`, `row`) of the grid on.

    FORBIDDEN where it may not stand. `counted` is the exact count, `doubts` what places cost that the judge will
    likely refuse, and `table` both with what was learned of places; `row_least` and `column_least` are its least.
    """

    row: int
    column: int
    counted: Cents
    doubts: Cents
    table: Cents
    row_least: Cents
    column_least: Cents
    least: int

    def at(self, spot: Spot, *, learned: bool = True) -> int:
        """Loss at a spot; FORBIDDEN outside the window."""
        row, column, table = spot.y - self.row, spot.x - self.column, self.table if learned else self.counted
        rows, columns = table.shape
        return int(table[row, column]) if 0 <= row < rows and 0 <= column < columns else FORBIDDEN

    def estimate(self, spot: Spot) -> int:
        """What was learned of a spot [cents]."""
        row, column = spot.y - self.row, spot.x - self.column
        return int(self.table[row, column] - self.counted[row, column])

    def only_at(self, cells: Cells) -> "Window | None":
        """The same where it may stand at these corners alone; None where nothing is left."""
        rows, columns = self.table.shape
        inside = cells[self.row : self.row + rows, self.column : self.column + columns]
        table = np.where(inside, self.table, FORBIDDEN)
        least = int(table.min())
        if least >= FORBIDDEN:
            return None
        return replace(self, table=table, row_least=table.min(axis=1), column_least=table.min(axis=0), least=least)

    def with_learned(self, learned: Cents) -> "Window":
        """The same count with another estimate of every place."""
        return Window.of(self.row, self.column, self.counted, self.doubts, learned)

    @classmethod
    def of(cls, row: int, column: int, counted: Cents, doubts: Cents, learned: Cents | int = 0) -> "Window":
        """A window with its leasts."""
        table = np.where(counted < FORBIDDEN, counted + doubts + learned, FORBIDDEN)
        return cls(row, column, counted, doubts, table, table.min(axis=1), table.min(axis=0), int(table.min()))


@dataclass(eq=False)
class Board:
    """`windows[room][variant]` is None where a variant fits nowhere; `by_least[room]` are variants, cheapest first.

    `shapes[room][variant]` numbers the shapes of a room: stamps are shared by variants of one shape.
    """

    problem: Problem
    windows: list[list[Window | None]]
    by_least: list[list[int]]
    shapes: list[list[int]]
    stamps: Stamps = field(repr=False)

    def stamp(self, room: int, variant: int, other: int, other_variant: int) -> Composite:
        """What a room does and suffers by its offset from another that stands."""
        own, others = self.shapes[room][variant], self.shapes[other][other_variant]
        return self.stamps.of((room, variant, own), (other, other_variant, others))

    def on(self, ground: Ground) -> "Board":
        """The same board where an idea leaves rooms less ground; what is learned later does not reach it."""
        windows = [list(row) for row in self.windows]
        for (room, v), cells in ground.cells.items():
            window = windows[room][v]
            windows[room][v] = None if window is None else window.only_at(cells)
        return replace(self, windows=windows, by_least=[_by_least(row) for row in windows])

    def learn(self, tables: Sequence[NDArray[np.float64]]) -> None:
        """Take over what was learned of each room's places; see `Residuals.tables`."""
        for room, table in enumerate(tables):
            for v, window in enumerate(self.windows[room]):
                if window is not None:
                    variant, (rows, columns) = self.problem.rooms[room].variants[v], window.table.shape
                    y = np.asarray(window.row + variant.depth / 2 + np.arange(rows))
                    x = np.asarray(window.column + variant.width / 2 + np.arange(columns))
                    self.windows[room][v] = window.with_learned(at_blocks(self.problem, table, y, x))
            self.by_least[room] = _by_least(self.windows[room])

    def estimate(self, state: State) -> int:
        """What was learned of the places of a state [cents]."""
        placed = ((self.windows[room][spot.variant], spot) for room, spot in enumerate(state) if spot is not None)
        return sum(window.estimate(spot) for window, spot in placed if window is not None)


def board_of(problem: Problem) -> Board:
    """Lay a problem out for the explorer."""
    windows = [
        [_window(problem, room, v) for v in range(len(data.variants))] for room, data in enumerate(problem.rooms)
    ]
    shapes = [_numbered(room) for room in problem.rooms]
    return Board(problem, windows, [_by_least(row) for row in windows], shapes, Stamps(problem))


def _numbered(room: ProblemRoom) -> list[int]:
    """Number of each variant's shape among the room's shapes."""
    numbers: dict[Shape, int] = {}
    return [numbers.setdefault(variant.shape, len(numbers)) for variant in room.variants]


def _by_least(windows: list[Window | None]) -> list[int]:
    leasts = {v: window.least for v, window in enumerate(windows) if window is not None}
    return sorted(leasts, key=lambda v: (leasts[v], v))


def _losses(problem: Problem, room: int, v: int) -> Cents:
    """Losses of a variant at every corner of the grid."""
    data, variant = problem.rooms[room], problem.rooms[room].variants[v]
    table = np.where(data.allowed[v], data.places[v] + data.losses[v], FORBIDDEN)
    rows, columns = np.arange(table.shape[0]), np.arange(table.shape[1])
    for pull in problem.pulls:
        if pull.room == room:
            table += pull.rate * np.abs(2 * columns + variant.anchor[0] - pull.at[0])[None, :]
            table += pull.rate * np.abs(2 * rows + variant.anchor[1] - pull.at[1])[:, None]
    return np.asarray(table, dtype=np.int64)


def _window(problem: Problem, room: int, v: int) -> Window | None:
    table, data = _losses(problem, room, v), problem.rooms[room]
    allowed = table < FORBIDDEN
    rows, columns = np.flatnonzero(allowed.any(axis=1)), np.flatnonzero(allowed.any(axis=0))
    if not len(rows):
        return None
    cropped = np.s_[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1]
    doubtful = problem.guide.doubts[room][v] if problem.guide.doubts else None
    # A doubt costs what it costs to do without the room: it is taken where nothing else fits.
    doubts = np.zeros(table.shape, np.int64) if doubtful is None else np.where(doubtful, np.int64(data.absent_loss), 0)
    return Window.of(int(rows[0]), int(columns[0]), np.ascontiguousarray(table[cropped]), doubts[cropped])
