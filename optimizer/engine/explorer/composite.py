"""All that two variants do to each other by offset, folded into one stamp that an insertion adds in a few slices."""

from dataclasses import dataclass
from typing import cast

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import FORBIDDEN, Along, Gaps, Penalty, Stamp
from optimizer.engine.pairs.stamp import Cents
from optimizer.engine.problem import Problem, RoomPair


@dataclass(frozen=True, slots=True, eq=False)
class Composite:
    """Loss of a moving room by the offset of its corner from a standing one's: `right` and `up` in steps.

    It is `along_x[right + reach_x] + along_y[up + reach_y] + far`, and inside a window that starts at (`right`, `up`)
    besides `patch`, of shape (rows, columns).
    """

    along_x: Cents
    along_y: Cents
    far: int
    right: int
    up: int
    patch: Cents

    @property
    def is_shut_outside(self) -> bool:
        """Whether the rooms may stand to each other only as inside the window."""
        return self.far >= FORBIDDEN

    @property
    def least(self) -> int:
        """Least loss at any offset."""
        rows, columns = self.patch.shape
        row, column = self.up + len(self.along_y) // 2, self.right + len(self.along_x) // 2
        inside = self.along_x[None, column : column + columns] + self.along_y[row : row + rows, None] + self.patch
        beyond = min(
            self._least_beside(self.along_x, column, columns) + int(self.along_y.min()),
            self._least_beside(self.along_y, row, rows) + int(self.along_x.min()),
        )
        return self.far + min(int(inside.min()) if inside.size else FORBIDDEN, beyond)

    @staticmethod
    def _least_beside(along: Cents, first: int, count: int) -> int:
        """Least of one axis outside the window's stretch of it."""
        outside = np.concatenate([along[: max(0, first)], along[first + count :]])
        return int(outside.min()) if outside.size else FORBIDDEN

    def add_to(self, table: Cents, right: int, up: int) -> None:
        """Add to a table of places the first of which lies at this offset."""
        rows, columns = table.shape
        row, column = up + len(self.along_y) // 2, right + len(self.along_x) // 2
        table += self.far
        table += self.along_x[None, column : column + columns]
        table += self.along_y[row : row + rows, None]
        self.add_patch(table, right, up)

    def add_patch(self, table: Cents, right: int, up: int) -> None:
        """Add what the window alone has to a table of places the first of which lies at this offset."""
        rows, columns = table.shape
        row, column = up - self.up, right - self.right
        low, left = max(0, row), max(0, column)
        part = self.patch[low : max(low, row + rows), left : max(left, column + columns)]
        if part.size:
            table[low - row : low - row + part.shape[0], left - column : left - column + part.shape[1]] += part

    def at(self, right: int, up: int) -> int:
        """Loss at one offset."""
        total = int(self.along_x[right + len(self.along_x) // 2] + self.along_y[up + len(self.along_y) // 2])
        row, column = up - self.up, right - self.right
        inside = 0 <= row < self.patch.shape[0] and 0 <= column < self.patch.shape[1]
        return total + self.far + (int(self.patch[row, column]) if inside else 0)

    def turned(self) -> "Composite":
        """The same loss with the other room moving."""
        rows, columns = self.patch.shape
        return Composite(
            np.ascontiguousarray(self.along_x[::-1]),
            np.ascontiguousarray(self.along_y[::-1]),
            self.far,
            1 - self.right - columns,
            1 - self.up - rows,
            np.ascontiguousarray(self.patch[::-1, ::-1]),
        )


def composite_of(problem: Problem, pair: RoomPair, first: Variant, second: Variant) -> Composite:
    """Stamp of the pair with its first room moving."""
    lattice = problem.context.lattice
    stamps: tuple[Stamp, ...] = pair.stamps
    if pair.contact.binds:
        stamps = (Penalty("contact", pair.contact), *stamps)  # type: ignore[arg-type]
    right, up = (np.arange(-count, count + 1, dtype=np.int64) for count in (lattice.columns, lattice.rows))
    everywhere = Gaps(first, second, right, up, lattice.step_ft)
    along = [cast("Along", stamp).cents_along(everywhere) for stamp in stamps if hasattr(stamp, "cents_along")]
    local = [stamp for stamp in stamps if not hasattr(stamp, "cents_along")]
    window = _window(everywhere, [stamp.reach for stamp in local])
    far = _far(everywhere, local)
    patch = sum((stamp.cents(window) for stamp in local), np.zeros((len(window.up), len(window.right)), np.int64)) - far
    return Composite(
        _sum([x for x, _ in along], len(right)),
        _sum([y for _, y in along], len(up)),
        far,
        int(window.right[0]) if len(window.right) else 0,
        int(window.up[0]) if len(window.up) else 0,
        np.asarray(patch),
    )


def _window(everywhere: Gaps, reaches: list[int | None]) -> Gaps:
    """The offsets outside of which no local stamp changes."""
    if None in reaches:
        return everywhere
    reach = max((reach for reach in reaches if reach is not None), default=-1)
    right, up = everywhere.right[everywhere.x <= reach], everywhere.up[everywhere.y <= reach]
    return Gaps(everywhere.first, everywhere.second, right, up, everywhere.step_ft)


def _far(everywhere: Gaps, local: list[Stamp]) -> int:
    """What the local stamps that have a reach cost beyond it; of the others nothing is far."""
    if any(stamp.reach is None for stamp in local):
        return 0
    beyond = max((stamp.reach or 0 for stamp in local), default=0) + 1
    offset = np.array([everywhere.second.width + beyond], dtype=np.int64)
    away = Gaps(everywhere.first, everywhere.second, offset, offset, everywhere.step_ft)
    return int(sum(int(stamp.cents(away)[0, 0]) for stamp in local))


def _sum(parts: list[NDArray[np.int64]], length: int) -> Cents:
    return np.asarray(sum(parts, np.zeros(length, dtype=np.int64)))
