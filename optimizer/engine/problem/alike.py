"""How differently states are arranged, many at once: the same figure as `layout.difference` gives for two layouts."""

from collections.abc import Sequence
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.problem.problem import Problem
from optimizer.engine.problem.state import State, rect_of
from optimizer.layout.arrangement import CHOICE_DIFFERS, MOVED_DIFFERS, MOVED_SHARE

Numbers = NDArray[np.float64]
_ABSENT = -1


class Archive:
    """States with what they are compared by."""

    def __init__(self, problem: Problem, diagonal_ft: float) -> None:
        self._problem, self._reach = problem, MOVED_SHARE * diagonal_ft / problem.context.lattice.step_ft
        self._pairs = np.array(list(combinations(range(len(problem.rooms)), 2)), dtype=np.int64).reshape(-1, 2)
        self._rows: list[tuple[Numbers, ...]] = []

    def add(self, state: State) -> None:
        """Keep one more."""
        self._rows.append(self._row(state))

    def least_difference(self, state: State) -> float:
        """Difference to the state of the archive that is most alike; 1 where it is empty."""
        if not self._rows:
            return 1.0
        known = tuple(np.array(column) for column in zip(*self._rows, strict=True))
        return float(self._differences(self._row(state), known).min())

    def _row(self, state: State) -> tuple[Numbers, ...]:
        """Choices, middles in half steps, and the sides of all pairs, upright and turned by a quarter."""
        choices = np.full(len(state), float(_ABSENT))
        low, high = np.zeros((len(state), 2)), np.zeros((len(state), 2))
        for room, spot in enumerate(state):
            if spot is not None:
                rect = rect_of(self._problem, room, spot)
                choices[room] = self._problem.rooms[room].variants[spot.variant].choice
                low[room], high[room] = (rect.x, rect.y), (rect.x + rect.width, rect.y + rect.depth)
        sides = [self._sides(low, high, axis) for axis in (0, 1)]
        return choices, (low + high) / 2, *sides

    def _sides(self, low: Numbers, high: Numbers, axis: int) -> Numbers:
        """Canonical side of each pair, told first by one axis."""
        first, second = self._pairs[:, 0], self._pairs[:, 1]
        other = 1 - axis
        above = low[first, other] + high[first, other] > low[second, other] + high[second, other]
        before = high[first, axis] <= low[second, axis]
        after = high[second, axis] <= low[first, axis]
        return np.where(before, 0.0, np.where(after, 1.0, 2.0 + above))

    def _differences(self, one: Sequence[Numbers], known: Sequence[Numbers]) -> Numbers:
        here, there = np.asarray(one[0] != _ABSENT), np.asarray(known[0] != _ABSENT)
        both, any_of = here & there, here | there
        moved = np.abs(one[1] - known[1]).max(axis=2)
        room = MOVED_DIFFERS * np.minimum(1.0, moved / self._reach) + CHOICE_DIFFERS * (one[0] != known[0])
        by_room = np.where(both, room, 1.0 * any_of).sum(axis=1) / np.maximum(1, any_of.sum(axis=1))
        return np.asarray(0.5 * by_room + 0.5 * self._by_pair(one, known, both, any_of))

    def _by_pair(self, one: Sequence[Numbers], known: Sequence[Numbers], both: Cells, any_of: Cells) -> Numbers:
        first, second = self._pairs[:, 0], self._pairs[:, 1]
        whole, some = both[:, first] & both[:, second], any_of[:, first] & any_of[:, second]
        sides = ((one[2] != known[2]) + 1.0 * (one[3] != known[3])) / 2
        return np.asarray(np.where(whole, sides, 1.0 * some).sum(axis=1) / np.maximum(1, some.sum(axis=1)))
