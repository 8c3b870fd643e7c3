"""Looking for layouts of a scenario for a short while, each judged: what holds, and what refused the others."""

import threading
import time
from collections import Counter
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Final

from optimizer.brief import RuleId
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.clock import Clock
from optimizer.concepts.picking import Picker
from optimizer.concepts.rounds import learn_cost, learn_refusals
from optimizer.engine.explorer import Explorer, Ground, Tour, board_of
from optimizer.engine.portfolio import REBUILDS, Purse, tour_of
from optimizer.engine.problem import Problem, build_problem, layout_of
from optimizer.engine.problem.alike import Archive
from optimizer.layout import Layout

Named = tuple[RuleId, tuple[str, ...]]
"""A rule with the rooms and things that break it."""
JUDGED_EACH: Final = 4
"""Layouts judged after each tour."""
MANY_TOURS, FEW_TOURS = 40, 10
"""Tours for the question itself, and for a way out: counted, so that a busy machine answers as another does."""


@dataclass(frozen=True, slots=True)
class Found:
    """A layout that holds, with its exact figures."""

    layout: Layout
    verdict: Verdict

    @property
    def cost(self) -> Decimal:
        """Exact cost of phase 1."""
        return self.verdict.measured.cost.phase(1)


@dataclass
class Trial:
    """What came of it: layouts that hold, and how many broke what, by the rule and what broke it."""

    case: Case
    holding: list[Found] = field(default_factory=list)
    refused: Counter[Named] = field(default_factory=Counter)

    @property
    def best(self) -> Found | None:
        """Best by the exact score; None where nothing holds."""
        return min(self.holding, key=lambda found: found.verdict.score, default=None)

    @property
    def holds(self) -> bool:
        """Whether anything holds."""
        return bool(self.holding)

    @property
    def has_judged(self) -> bool:
        """Whether any layout came as far as the judge."""
        return self.holds or bool(self.refused)

    def most_refused(self, most: int) -> tuple[Named, ...]:
        """The rules broken most often, each with the rooms that broke it most often."""
        rules: Counter[RuleId] = Counter()
        for (rule, _), count in self.refused.items():
            rules[rule] += count
        by_rooms = [named for named, _ in self.refused.most_common()]
        return tuple(next(named for named in by_rooms if named[0] == rule) for rule, _ in rules.most_common(most))

    def judge(self, layout: Layout) -> Verdict:
        """Ask the judge, and keep what comes of it."""
        verdict = self.case.judged(layout)
        if verdict.holds:
            self.holding.append(Found(layout, verdict))
        self.refused.update({(finding.rule, finding.rooms) for finding in verdict.findings})
        return verdict


def tried(
    case: Case,
    *,
    seconds: float,
    stop: threading.Event,
    problem: Problem | None = None,
    enough: int = 1,
    tours: int = FEW_TOURS,
    ground: Ground | None = None,
) -> Trial:
    """Judge what so many tours find, until `enough` hold or the time is up, and no more than a few tours where these
    find nothing to judge; `ground` leaves rooms no more than that to stand on.
    """
    clock, trial = Clock(stop, time.monotonic() + seconds), Trial(case)
    problem = problem or build_problem(case.scenario, case.rooms, case.book)
    if not placeless_rooms(problem):
        _tour(trial, problem, clock, enough, range(tours), ground)
    return trial


def placeless_rooms(problem: Problem, *, asked: str | None = None) -> list[str]:
    """Names of the required rooms, and of the one asked for, that may stand nowhere, whatever the others do."""
    wanted = [room for room in problem.rooms if room.required or room.name == asked]
    return [room.name for room in wanted if not any(cells.any() for cells in room.allowed)]


def _tour(trial: Trial, problem: Problem, clock: Clock, enough: int, turns: range, ground: Ground | None) -> None:
    explorer, purse, seed = Explorer(board_of(problem)), Purse(problem), trial.case.scenario.brief.options.seed
    picker = Picker(explorer, purse, Archive(problem, trial.case.diagonal_ft))
    for turn in turns:
        if turn == FEW_TOURS and not trial.has_judged:
            return  # So many tours brought nothing to the judge: the time is worth more to ways out.
        if ground is not None or turn % 2 == 0:
            # At first nothing is set aside: what then passes the ceiling tells what the ways cost, and that they do.
            aside = purse.set_aside(turn) if turn else 0
            tour = Tour(REBUILDS[0], seed + turn, set_aside=aside, ground=ground)
        else:
            tour = tour_of(problem, turn, seed=seed, purse=purse, best=())
        explorer.run(tour, stop=clock)
        for state in picker.pick(JUDGED_EACH):
            verdict = trial.judge(layout_of(problem, state))
            learn_refusals(explorer, state, verdict)
            learn_cost(trial.case, purse, state, verdict)
            if len(trial.holding) >= enough or clock.is_set():
                return
