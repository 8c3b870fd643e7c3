"""The explorer: ruin and recreate with exact insertion, keeping the best layout of every arrangement it passes."""

import threading
from dataclasses import dataclass, field

import numpy as np

from optimizer.engine.explorer.board import Board
from optimizer.engine.explorer.ground import Ground
from optimizer.engine.explorer.insertion import ABSENT_REQUIRED, Noise, best_spot
from optimizer.engine.explorer.limits import Limits
from optimizer.engine.explorer.pool import Pool
from optimizer.engine.explorer.refusals import Refusals
from optimizer.engine.explorer.value import value_of
from optimizer.engine.problem import Problem, Spot, State

LEAST_HEAT_CENTS = 20_000
NOISY_SHARE = 0.3
"""Part of the rebuilds in which rooms are put back with noise."""


@dataclass(frozen=True, slots=True)
class Tour:
    """One run of the explorer: how many rebuilds, rooms that it leaves out or insists on, the cents that it sets aside
    for the ways, where it starts, the ground that an idea leaves to rooms, and whether rooms may wait on their pads.
    """

    rebuilds: int
    seed: int
    without: frozenset[int] = frozenset()
    insist: frozenset[int] = frozenset()
    set_aside: int = 0
    start: State | None = None
    ground: Ground | None = None
    may_wait: bool = False


@dataclass
class Explorer:
    """A board with what was found and what was refused; what was found on an idea's ground is also kept by its name."""

    board: Board
    pool: Pool = field(default_factory=Pool)
    refusals: Refusals = field(default_factory=Refusals)
    of_ideas: dict[str, Pool] = field(default_factory=dict)

    def counted(self, state: State) -> int:
        """What the explorer counts of a state, without what was learned [cents]."""
        return value_of(self.board, Limits.of(self.board.problem), state, learned=False)

    def run(self, tour: Tour, *, stop: threading.Event) -> None:
        """Run a tour and keep what it passes in the pool."""
        problem = self.board.problem
        limits = Limits.of(problem, set_aside=tour.set_aside, insist=tour.insist, may_wait=tour.may_wait)
        random, heat = np.random.default_rng(tour.seed), heat_of(problem)
        board = self.board if tour.ground is None else self.board.on(tour.ground)
        walk = _Walk(self, board, limits, tour, random)
        start = limits.begun(tour.start or tuple(None for _ in problem.rooms))
        state = walk.recreate(start, {}, noise=None)
        value = walk.keep(state)
        for turn in range(tour.rebuilds):
            if stop.is_set():
                return
            candidate = walk.rebuilt(state, heat)
            candidate_value = walk.keep(candidate)
            if candidate_value <= value + heat * (1 - turn / tour.rebuilds) * random.random():
                state, value = candidate, candidate_value


@dataclass(frozen=True, slots=True)
class _Walk:
    """One tour's steps."""

    explorer: Explorer
    board: Board
    limits: Limits
    tour: Tour
    random: np.random.Generator

    def rebuilt(self, state: State, heat: float) -> State:
        """Take two to four rooms out and put each back, now and then with noise."""
        taken = self.random.permutation(len(state))[: int(self.random.integers(2, 5))].tolist()
        thinned = tuple(None if room in taken else spot for room, spot in enumerate(state))
        noise = Noise(self.random, int(heat)) if self.random.random() < NOISY_SHARE else None
        return self.recreate(thinned, {} if noise else dict(enumerate(state)), noise=noise)

    def recreate(self, state: State, before: dict[int, Spot | None], *, noise: Noise | None) -> State:
        """Put every missing room in, in some order; where each stood before is tried first."""
        spots = list(state)
        missing = [room for room, spot in enumerate(state) if spot is None and room not in self.tour.without]
        for room in self.random.permutation(missing).tolist():
            spots[room] = best_spot(
                self.board,
                self.limits,
                tuple(spots),
                room,
                refusals=self.explorer.refusals,
                noise=noise,
                at=before.get(room),
            )
        return tuple(spots)

    def keep(self, state: State) -> int:
        """Value of a state, which is kept if it is the best of its arrangement and can be walked."""
        board, ground = self.explorer.board, self.tour.ground
        value = value_of(self.board, self.limits, state)
        if value < ABSENT_REQUIRED:
            pools = [self.explorer.pool]
            if ground is not None:
                pools.append(self.explorer.of_ideas.setdefault(ground.idea, Pool()))
            for pool in pools:
                pool.take(board, state, value)
        return value


def heat_of(problem: Problem) -> float:
    """A step worth taking uphill [cents]: a fiftieth of what all rooms are worth together."""
    return max(LEAST_HEAT_CENTS, sum(room.absent_loss for room in problem.rooms) / 50)
