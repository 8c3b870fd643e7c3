"""Layouts near to a sketch by the explorer, which knows where the judge will likely refuse and learns where it did.

The exact model asks for the nearest layout of all and knows nothing of levels and ways; on steep ground the judge may
refuse its layouts for longer than anybody waits. What is found here holds, and nothing is proven of it.
"""

import threading
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.improve.measure import feet_of, wanted_of
from optimizer.concepts.rounds import learn_cost, learn_refusals
from optimizer.engine.explorer import Explorer, Tour, board_of, mended
from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.variants import Variant
from optimizer.engine.model.nearest import FINE, Wanted
from optimizer.engine.portfolio import Purse
from optimizer.engine.problem import Problem, ProblemRoom, State, build_problem, what_fits
from optimizer.engine.terms import Losses
from optimizer.layout import Layout

CENTS_A_FOOT: Final = 100_000
"""What a foot counts against the doubts about places, which are in money."""
_REBUILDS: Final = 60
_JUDGED: Final = 3
"""Layouts judged after each tour."""


class Explored:
    """Gives layouts near to a sketch, one after the other, and is told what the judge says of each."""

    def __init__(self, case: Case, sketch: Layout) -> None:
        self._case = case
        whole = build_problem(case.scenario, case.rooms, case.book)
        bare = build_problem(case.scenario, case.rooms, case.book, rules_only=True)
        self.problem = near_problem(replace(bare, guide=whole.guide, reach=whole.reach), wanted_of(bare, sketch))
        self._explorer = Explorer(board_of(self.problem))
        self._purse, self._seed = Purse(self.problem), case.scenario.brief.options.seed
        self._start = mended(self._explorer.board, what_fits(self.problem, sketch))
        self._judged: set[State] = set()

    def states(self, stop: threading.Event) -> Iterator[State]:
        """Layouts that are worth judging, after each tour the nearest of those that are left; until it is set."""
        turn = 0
        while not stop.is_set():
            start = self._start if turn % 2 == 0 else None
            tour = Tour(_REBUILDS, self._seed + turn, start=start, set_aside=self._purse.set_aside(turn))
            self._explorer.run(tour, stop=stop)
            self._purse.is_tight |= not self._explorer.pool.best
            for _ in range(_JUDGED):
                state = None if stop.is_set() else self._next()
                if state is not None:
                    self._judged.add(state)
                    yield state
            turn += 1

    def learn(self, state: State, verdict: Verdict) -> None:
        """Keep off what was refused, and set aside what ways cost; what holds is where further tours begin."""
        learn_refusals(self._explorer, state, verdict)
        learn_cost(self._case, self._purse, state, verdict)
        if verdict.holds:
            self._start = state

    def _next(self) -> State | None:
        refusals, pool = self._explorer.refusals, self._explorer.pool
        new = (state for _, state in pool.ranked() if any(state) and state not in self._judged)
        return next((state for state in new if not refusals.forbid(self.problem, state)), None)


def near_problem(problem: Problem, wanted: Sequence[Wanted]) -> Problem:
    """A problem whose only losses are how far rooms are from where they are wanted [cents]."""
    rooms = (_near(problem, room, want) for room, want in zip(problem.rooms, wanted, strict=True))
    return replace(problem, rooms=tuple(rooms))


def _near(problem: Problem, room: ProblemRoom, want: Wanted) -> ProblemRoom:
    lattice = problem.context.lattice

    def cents(parts: int) -> int:
        return round(CENTS_A_FOOT * feet_of(lattice, parts))

    return replace(
        room,
        losses=tuple(cents(change) for change in want.changes),
        places=room.places if want.middle is None else tuple(_places(lattice, v, want.middle) for v in room.variants),
        absent_loss=cents(want.left_out),
    )


def _places(lattice: Lattice, variant: Variant, middle: tuple[int, int]) -> Losses:
    """What each corner's way from the wanted middle counts [cents]."""
    x, y = middle
    along = np.abs(FINE * (2 * np.arange(lattice.columns) + variant.width) - x)
    up = np.abs(FINE * (2 * np.arange(lattice.rows) + variant.depth) - y)
    return np.rint((up[:, None] + along) * CENTS_A_FOOT * feet_of(lattice, 1)).astype(np.int64)
