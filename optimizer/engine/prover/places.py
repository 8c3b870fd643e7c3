"""Places of one program's main room that may still belong to something better, by exact tables without order.

With the main room held at a place, every other room has a table: what it costs at each of its places, the walking to
the main room and all that the two ask of each other in it. The least of these tables together are a floor; places of
other rooms that lie too far above it are struck out. Then the next room is held, and so on.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from optimizer.engine.explorer import Board, board_of
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.pairs.stamp import Cents
from optimizer.engine.problem import Problem, Spot, State
from optimizer.engine.problem.modelled import restricted
from optimizer.engine.prover.programs import Program
from optimizer.engine.terms.walking import Walking


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """Losses of a room's variant over a window of the grid that starts at (`column`, `row`)."""

    variant: int
    row: int
    column: int
    losses: Cents

    def below(self, limit: int) -> "Table | None":
        """The smallest window that holds all places under the limit; None where there is none."""
        kept = self.losses < limit
        rows, columns = np.flatnonzero(kept.any(axis=1)), np.flatnonzero(kept.any(axis=0))
        if not len(rows):
            return None
        window = np.s_[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1]
        losses = np.where(kept[window], self.losses[window], FORBIDDEN)
        return Table(self.variant, self.row + int(rows[0]), self.column + int(columns[0]), losses)

    def places(self) -> Iterator[tuple[int, Spot]]:
        """Loss and spot of every place that is left."""
        for row, column in np.argwhere(self.losses < FORBIDDEN).tolist():
            yield int(self.losses[row, column]), Spot(self.variant, self.column + column, self.row + row)


Tables = dict[int, list[Table]]
"""What is left of each room that is there, by variant."""


@dataclass(frozen=True, slots=True, eq=False)
class Leaf:
    """Some rooms at places: what a layout with them there costs at least, and what is left of the other rooms.

    `own` is what the rooms at their places cost by themselves and with each other [cents].
    """

    floor: int
    own: int
    held: tuple[tuple[int, Spot], ...]
    others: Tables

    @property
    def last(self) -> Spot:
        """Where the room is that was held last."""
        return self.held[-1][1]


class Places:
    """Tables of one program. Variants are numbered as in the program's own problem, which holds its choices alone."""

    def __init__(self, modelled: Problem, program: Program) -> None:
        self.program = program
        self.problem, self.numbers = restricted(modelled, program.choices)
        self.board: Board = board_of(self.problem)
        self.there = [room for room, choice in enumerate(program.choices) if choice >= 0]
        self.absent = sum(self.problem.rooms[r].absent_loss for r, c in enumerate(program.choices) if c < 0)

    def leaves(self, limit: int, beyond: Leaf | None = None) -> list[Leaf]:
        """Places of one more room that something below the limit may have, least floor first: of the main room, or
        beside those that a leaf holds.
        """
        begun = beyond or Leaf(0, self.absent, (), self.open_tables(limit))
        if not begun.others:
            return []
        room = max(begun.others, key=lambda room: (self._ties(room), -room))
        found = [
            leaf
            for table in begun.others[room]
            for loss, spot in table.places()
            if (leaf := self._held(begun, room, spot, loss, limit)) is not None
        ]
        return sorted(found, key=lambda leaf: (leaf.floor, leaf.last.variant, leaf.last.y, leaf.last.x))

    def open_tables(self, limit: int) -> Tables:
        """Tables of all rooms with the places that something below the limit may have; none where nothing may be."""
        settled = self._settled({room: self._own(room) for room in self.there}, self.absent, limit)
        return {} if settled is None else settled[1]

    def _held(self, begun: Leaf, room: int, spot: Spot, loss: int, limit: int) -> Leaf | None:
        """A leaf with one more room at a place; None where nothing with it can stay below the limit."""
        own = begun.own + loss
        beside = {other: self._beside(other, left, room, spot) for other, left in begun.others.items() if other != room}
        settled = self._settled(beside, own, limit)
        return None if settled is None else Leaf(settled[0], own, (*begun.held, (room, spot)), settled[1])

    def between(self, room: int, spot: Spot, other: int, there: Spot) -> int:
        """What two rooms at their spots cost each other [cents]."""
        cents = np.zeros((1, 1), dtype=np.int64)
        self.board.stamp(room, spot.variant, other, there.variant).add_to(cents, spot.x - there.x, spot.y - there.y)
        return int(cents[0, 0])

    def whole(self, state: State) -> State:
        """A state of the program's own problem in the numbers of the whole one."""
        return tuple(
            None if spot is None else replace(spot, variant=self.numbers[room][spot.variant])
            for room, spot in enumerate(state)
        )

    def masks(self, whole: Problem, leaves: Sequence[Leaf]) -> tuple[tuple[Cells, ...], ...]:
        """For each variant of each room of the whole problem, the places that some leaf leaves open."""
        masks = tuple(tuple(np.zeros_like(allowed) for allowed in room.allowed) for room in whole.rooms)
        for leaf in leaves:
            for room, spot in leaf.held:
                masks[room][self.numbers[room][spot.variant]][spot.y, spot.x] = True
            for room, tables in leaf.others.items():
                for table in tables:
                    rows, columns = table.losses.shape
                    window = np.s_[table.row : table.row + rows, table.column : table.column + columns]
                    masks[room][self.numbers[room][table.variant]][window] |= table.losses < FORBIDDEN
        return masks

    def _own(self, room: int) -> list[Table]:
        windows = enumerate(self.board.windows[room])
        return [Table(v, window.row, window.column, window.table) for v, window in windows if window is not None]

    def _beside(self, room: int, own: list[Table], held: int, spot: Spot) -> list[Table]:
        """Tables of a room with another one held at a spot."""
        found = []
        for table in own:
            losses = table.losses.copy()
            stamp = self.board.stamp(room, table.variant, held, spot.variant)
            stamp.add_to(losses, table.column - spot.x, table.row - spot.y)
            found.append(Table(table.variant, table.row, table.column, losses))
        return found

    @staticmethod
    def _settled(tables: Tables, fixed: int, limit: int) -> tuple[int, Tables] | None:
        """Floor of all rooms together, and the tables without places that can't stay below the limit; or None."""
        least = {room: min((int(t.losses.min()) for t in own), default=FORBIDDEN) for room, own in tables.items()}
        floor = fixed + sum(least.values())
        if floor >= limit:
            return None
        slack = limit - floor
        kept = {
            room: [left for table in own if (left := table.below(least[room] + slack)) is not None]
            for room, own in tables.items()
        }
        return floor, kept

    def _ties(self, room: int) -> int:
        """How much walking leads to a room from others: the main room, which is held first, has most."""
        return sum(
            stamp.rate
            for pair in self.problem.pairs
            if room in (pair.first, pair.second) and {pair.first, pair.second} <= set(self.there)
            for stamp in pair.stamps
            if isinstance(stamp, Walking)
        )
