"""What judged layouts cost beyond the explorer's count, learned by where rooms stand: real ways, levels, what is
measured only. Estimates: they guide the explorer, and no proof rests on them.

A Gaussian process whose covariance is a sum over rooms: two layouts are alike as far as the same rooms are there and
stand near the same places (Duvenaud, Nickisch and Rasmussen 2011, additive Gaussian processes).
"""

from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.problem import Problem, State

NEAR_FT: Final = 14.0
"""Distance over which the cost of a place changes."""
_PRESENT, _PLACE, _NOISE = 0.3, 1.0, 0.3
"""Variances, relative to each other: of a room's being there, of its place, and of what neither explains."""
_BLOCK_FT = 4.0  # places this near have one estimate, by far finer than what is learned
_MOST_LEARNED = 400
_EVEN = 1e-6

Numbers = NDArray[np.float64]


@dataclass
class Residuals:
    """Judged states, as centres of rooms [ft], NaN for absent ones, and the cents that each cost beyond its count."""

    problem: Problem
    centres: list[Numbers] = field(default_factory=list)
    cents: list[float] = field(default_factory=list)
    _weights: Numbers | None = None

    def learn(self, state: State, cents: float) -> None:
        """Remember one more; the oldest goes once there are many. Whole cents: a yard in metres learns the same."""
        self.centres.append(_centres_ft(self.problem, state))
        self.cents.append(float(round(cents)))
        del self.centres[:-_MOST_LEARNED], self.cents[:-_MOST_LEARNED]
        self._weights = None

    def at(self, state: State) -> float:
        """What a layout likely costs beyond its count [cents]: the mean, and what its places say."""
        excess = np.array(self.cents)
        if self._weights is None:
            self._weights = _weights(np.array(self.centres), excess - excess.mean())
        alike = _alike(np.array(self.centres), _centres_ft(self.problem, state)).sum(axis=1)
        return float(excess.mean() + alike @ self._weights)

    def tables(self) -> list[Numbers]:
        """For each room what its place costs beyond the count [cents], over blocks of the grid; see `at_blocks`."""
        known, excess = np.array(self.centres), np.array(self.cents)
        weights = _weights(known, excess - excess.mean())
        y, x = (np.arange(count) * _BLOCK_FT for count in block_counts(self.problem))
        grid = np.stack(np.meshgrid(x, y), axis=-1)
        return [_room_table(grid, known[:, room], weights) for room in range(known.shape[1])]


def block_counts(problem: Problem) -> tuple[int, int]:
    """Blocks of the grid, as rows and columns."""
    lattice = problem.context.lattice
    rows, columns = (int(count * lattice.step_ft / _BLOCK_FT) + 2 for count in (lattice.rows, lattice.columns))
    return rows, columns


def at_blocks(problem: Problem, table: Numbers, rows: Numbers, columns: Numbers) -> NDArray[np.int64]:
    """A room's table at centres in steps from the grid's origin, for every row and column."""
    step = problem.context.lattice.step_ft / _BLOCK_FT
    # Half a block goes up, also where a step in metres makes it a hair less.
    y, x = (np.floor(at * step + 0.5 + _EVEN).astype(np.int64) for at in (rows, columns))
    return np.asarray(np.floor(table[np.ix_(y, x)] + 0.5 + _EVEN), dtype=np.int64)


def _centres_ft(problem: Problem, state: State) -> Numbers:
    """Centres from the grid's origin, shape (rooms, 2)."""
    result = np.full((len(state), 2), np.nan)
    for room, spot in enumerate(state):
        if spot is not None:
            variant = problem.rooms[room].variants[spot.variant]
            result[room] = (spot.x + variant.width / 2, spot.y + variant.depth / 2)
    return np.asarray(result * problem.context.lattice.step_ft)


def _weights(known: Numbers, excess: Numbers) -> Numbers:
    """Weight of each judged layout in the estimate of any place."""
    covariance = sum(_alike(known[:, None, room], known[None, :, room]) for room in range(known.shape[1]))
    return np.asarray(np.linalg.solve(covariance + _NOISE * np.eye(len(known)), excess))


def _alike(one: Numbers, other: Numbers) -> Numbers:
    """Covariance of a room's places; 0 where it is absent from either."""
    squared = ((one - other) ** 2).sum(axis=-1)
    return np.asarray(np.nan_to_num(_PRESENT + _PLACE * np.exp(-squared / (2 * NEAR_FT**2)), nan=0.0))


def _room_table(grid: Numbers, known: Numbers, weights: Numbers) -> Numbers:
    there = ~np.isnan(known[:, 0])
    table = np.zeros(grid.shape[:2])
    for centre, weight in zip(known[there], weights[there], strict=True):
        table += weight * _alike(grid, centre)
    return table
