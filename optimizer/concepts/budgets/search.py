"""The search for what each budget buys: one yard, many ceilings, worth before everything else.

One problem is built for the highest ceiling. A tour for a lower one sets so much more aside, so that all ceilings share
what was learned, and the judge asks only whether a layout holds and what it costs.
"""

import threading
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from itertools import count
from typing import Final

from optimizer.brief import WORTH_DIGITS
from optimizer.concepts.budgets.points import Bought
from optimizer.concepts.budgets.possible import Possible
from optimizer.concepts.budgets.programs import Program, least_cents
from optimizer.concepts.budgets.thinning import thinned
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import CENTS
from optimizer.concepts.rounds import LEARNED_FROM, learn_refusals
from optimizer.concepts.workers import Pending, Workers, results
from optimizer.engine.explorer import Explorer, Residuals, Tour, board_of
from optimizer.engine.portfolio import REBUILDS, Purse
from optimizer.engine.problem import State, layout_of, state_of
from optimizer.layout import Layout

JUDGED_EACH: Final = 3
"""Layouts judged for each tour."""
ROUNDS_A_SECOND: Final = 1.0
"""Rounds of a repeatable search for each second that it is given."""
TRIED_IN_VAIN: Final = 3
"""Rounds for each program without any layout that holds, after which the search gives up."""


@dataclass(frozen=True, slots=True)
class BudgetAsked:
    """One call. `points`: so many budgets are told; `start` are layouts known from before."""

    case: Case
    lowest: Decimal
    highest: Decimal
    points: int
    seconds: float
    seed: int
    repeatable: bool = False
    start: tuple[Layout, ...] = ()
    processes: int | None = None


@dataclass
class BudgetSearch:
    """Layouts by ceiling. `bought` holds all that keep every rule but, perhaps, the ceiling asked for.

    Where the brief offers finish levels, the search is made in the cheapest.
    """

    asked: BudgetAsked
    stop: threading.Event
    bought: dict[Layout, Bought] = field(default_factory=dict)
    offered: dict[Layout, tuple[Bought, ...]] = field(default_factory=dict)
    """The same layouts, each in every finish level that the brief offers; without levels as in `bought`."""

    def __post_init__(self) -> None:
        """Read the yard once, for the highest ceiling."""
        self.possible = Possible.of(self.asked.case, self.asked.highest)
        self.case, self.problem = self.possible.case, self.possible.problem
        self.programs = self.possible.programs
        self._explorer, self._purse = Explorer(board_of(self.problem)), Purse(self.problem)
        self._residuals = Residuals(self.problem)
        self._seen: set[State] = set()
        self._targets = self._programs_to_try()

    def run(self) -> Iterator[int]:
        """Search until the time is up or somebody stops it; after each round so many layouts are known."""
        clock = Clock(self.stop, None if self.asked.repeatable else time.monotonic() + self.asked.seconds)
        rounds = count() if not self.asked.repeatable else range(round(ROUNDS_A_SECOND * self.asked.seconds))
        with Workers(self.case, processes=self.asked.processes) as workers:
            begun = self._begin(workers, self._known_from_before())
            for turn in rounds:
                if self._is_over(turn, clock):
                    break
                program = self._targets[-1 - turn % len(self._targets)]
                self._tour(turn, program, clock)
                picked = self._begin(workers, self._picked(self._ceiling_for(program, turn)))
                self._learn(begun)
                begun = picked
                yield len(self.bought)
            self._learn(begun)
        yield len(self.bought)

    def _known_from_before(self) -> list[State]:
        states = (state_of(self.problem, layout) for layout in self.asked.start)
        return [state for state in dict.fromkeys(states) if state is not None]

    def _is_over(self, turn: int, clock: Clock) -> bool:
        """Whether a person or the clock ends it, or nothing is found at all."""
        if not self.bought:
            return clock.is_set() or turn >= TRIED_IN_VAIN * len(self._targets)
        return clock.is_past(1.0)

    def _programs_to_try(self) -> list[Program]:
        """The programs within the highest ceiling that tell most, twice as many as points are told.

        Those of the same choices in several levels are one, by the prices of the search.
        """
        front = [p for p in self.programs.front if p.cents <= self.asked.highest * CENTS] or self.programs.front[:1]
        front = list({p.choices: p for p in reversed(front)}.values())[::-1]
        kept = thinned([p.cents for p in front], [p.worth for p in front], 2 * self.asked.points)
        fixed = self.possible.fixed_cents
        return [
            replace(front[number], cents=fixed + least_cents(self.problem, front[number].choices)) for number in kept
        ]

    def _ceiling_for(self, program: Program, turn: int) -> Decimal:
        """What a program will likely need with its ways, now less, now more, within what is asked for."""
        likely = Decimal(program.cents + self._purse.set_aside(turn // len(self._targets))) / CENTS
        return min(self.asked.highest, max(self.asked.lowest, likely))

    def _tour(self, turn: int, program: Program, clock: Clock) -> None:
        """Rebuild under the ceiling of a program, every second time insisting on its rooms."""
        visit, ceiling = turn // len(self._targets), self._ceiling_for(program, turn)
        saved = round((self.asked.highest - ceiling) * CENTS)
        self._explorer.run(
            Tour(
                REBUILDS[visit % len(REBUILDS)],
                self.asked.seed + turn,
                insist=_rooms_of(program) if visit % 2 == 0 else frozenset(),
                set_aside=saved + self._purse.set_aside(visit),
                start=self._best_within(ceiling) if visit % 3 == 2 else None,
                may_wait=True,
            ),
            stop=clock,
        )

    def _best_within(self, ceiling: Decimal) -> State | None:
        within = [one for one in self.bought.values() if one.cost <= ceiling]
        best = max(within, key=lambda one: (one.worth, -one.score), default=None)
        return None if best is None else state_of(self.problem, best.layout)

    def _picked(self, ceiling: Decimal) -> list[State]:
        """Layouts to be judged: by the likely price within the ceiling, most worth first, then the least loss."""
        board, refusals = self._explorer.board, self._explorer.refusals
        likely = round(ceiling * CENTS) - self.possible.fixed_cents - self._purse.set_aside(0)
        ranked = sorted(
            (-self._worth(state), value + board.estimate(state), number, state)
            for number, (value, state) in enumerate(self._explorer.pool.ranked())
            if state not in self._seen and self._purse.of_rooms(state) <= likely
        )
        new = [state for *_, state in ranked if not refusals.forbid(self.problem, state)]
        return new[:JUDGED_EACH]

    def _worth(self, state: State) -> float:
        placed = [(room, spot.variant) for room, spot in enumerate(state) if spot is not None]
        rooms, known = self.case.rooms, self.problem.rooms
        return round(sum(rooms[r].choices[known[r].variants[v].choice].worth for r, v in placed), WORTH_DIGITS)

    def _begin(self, workers: Workers, states: Sequence[State]) -> list[tuple[State, Pending[Verdict]]]:
        self._seen.update(states)
        pending = workers.judge([layout_of(self.problem, state) for state in states])
        return list(zip(states, pending, strict=True))

    def _learn(self, begun: Sequence[tuple[State, Pending[Verdict]]]) -> None:
        for (state, _), verdict in zip(begun, results(*(pending for _, pending in begun)), strict=True):
            layout = layout_of(self.problem, state)
            cost = verdict.phase_1(self.asked.highest)
            if cost is not None:
                self._purse.learn(state, round(cost * CENTS) - self.possible.fixed_cents)
            if verdict.holds:
                worth = round(verdict.measured.worth, WORTH_DIGITS)
                bought = Bought(layout, verdict.measured.cost.phase(1), worth, verdict.score)
                self.bought[layout], self.offered[layout] = bought, tuple(in_each_level(bought, verdict))
                self._residuals.learn(state, CENTS * verdict.score - self._explorer.counted(state))
            learn_refusals(self._explorer, state, verdict)
        if len(self._residuals.cents) >= LEARNED_FROM:
            self._explorer.board.learn(self._residuals.tables())


def in_each_level(bought: Bought, verdict: Verdict) -> Iterator[Bought]:
    """What was bought, in each level in which later phases keep their own ceilings; as it is where there are none."""
    if not verdict.at_levels:
        yield bought
    for at in verdict.at_levels:
        if not set(at.over) - {1}:
            yield replace(bought, cost=at.phase_1, worth=at.worth, level=at.level)


def _rooms_of(program: Program) -> frozenset[int]:
    return frozenset(room for room, choice in enumerate(program.choices) if choice is not None)
