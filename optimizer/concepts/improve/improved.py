"""From a sketch to the nearest layout that keeps the rules: the solver by its rules, the judge by reality.

What the judge refuses is forbidden and the solver asked again: at first that one layout, then the blamed rooms near to
where they stood, farther and farther. What the solver proved before is what any layout of the grid moves at the least.
Where that takes too long, as it may on steep ground, the explorer looks for layouts that hold, and the nearest of them
is what is told.
"""

import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final, Literal

from optimizer.brief import RuleId
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.clock import Clock
from optimizer.concepts.improve.explored import Explored
from optimizer.concepts.improve.measure import change_ft, distance_ft, feet_of, wanted_of
from optimizer.engine.problem import State, build_problem, layout_of
from optimizer.engine.prover import anything_fits
from optimizer.engine.prover.nearest import Nearest
from optimizer.events import Emit, Event, to_nobody
from optimizer.layout import Layout, Placement

Status = Literal["kept", "nearest", "near", "nothing_fits", "undecided"]
"""The sketch keeps every rule; a layout proven to be the nearest, or one that is near; none can be; none was found."""
SINGLY: Final = 2
"""Layouts that are refused one by one before their neighbourhood is."""
SOLVING: Final = 1 / 3
"""Share of the time after which the explorer takes over."""
_WIDEST: Final = 3
_CENTS: Final = 100


@dataclass(frozen=True, slots=True)
class Improved:
    """What came of it. `distance_ft` is how far the layout is from the sketch; `least_ft` how far any layout of the
    grid is at the least, by the solver's count, which knows fewer rules than the judge; None where it is not known.

    `refused` are the rules by which layouts that the solver found were refused, each once.
    """

    status: Status
    layout: Layout | None = None
    distance_ft: float | None = None
    least_ft: float | None = None
    refused: tuple[RuleId, ...] = ()


def improved(case: Case, sketch: Layout, *, seconds: float, stop: threading.Event, emit: Emit = to_nobody) -> Improved:
    """The nearest layout to a sketch that the judge lets pass, by the time given."""
    if case.judged(sketch).holds:
        return Improved("kept", sketch, 0.0, 0.0)
    return _Improving(case, sketch, time.monotonic() + seconds, stop, emit).improved()


class _Improving:
    """One sketch on its way to the rules."""

    def __init__(self, case: Case, sketch: Layout, until: float, stop: threading.Event, emit: Emit) -> None:
        self._case, self._sketch, self._until, self._stop, self._emit = case, sketch, until, stop, emit
        self._solves_until = time.monotonic() + SOLVING * (until - time.monotonic())
        self._problem = build_problem(case.scenario, case.rooms, case.book, rules_only=True)
        self._nearest = Nearest(self._problem, wanted_of(self._problem, sketch))
        self._refused: dict[RuleId, int] = {}
        self._least: int | None = None
        self._ended: Status | None = None
        self._is_proven = False

    def improved(self) -> Improved:
        turn = -1
        for turn, state in enumerate(self._states()):
            layout, verdict = self._judged(turn, state)
            if verdict.holds:
                return self._found(layout)
            self._refuse(turn, state, verdict)
        explored = None if self._ended else self._nearest_explored(turn + 1)
        return self._result(self._ended or "undecided") if explored is None else self._found(explored)

    def _judged(self, turn: int, state: State) -> tuple[Layout, Verdict]:
        self._emit(Event("stage", {"stage": f"judging layout {turn + 1}"}))
        layout = layout_of(self._problem, state)
        return layout, self._case.judged(layout)

    def _nearest_explored(self, turn: int) -> Layout | None:
        """The nearest of the layouts that the explorer finds and the judge lets pass, by the end of the time."""
        self._is_proven, best, best_ft = False, None, float("inf")
        explored = Explored(self._case, self._sketch)
        for number, state in enumerate(explored.states(Clock(self._stop, self._until)), turn):
            layout, verdict = self._judged(number, state)
            far_ft = distance_ft(self._case.rooms, self._sketch, layout)
            if verdict.holds and far_ft < best_ft:
                best, best_ft = layout, far_ft
            explored.learn(state, verdict)
        return best

    def _states(self) -> Iterator[State]:
        """Layouts of the solver until there are no more, or the time is up."""
        while (left := self._solves_until - time.monotonic()) > 0 and not self._stop.is_set():
            answer = self._nearest.next(seconds=left, stop=self._stop)
            if self._nearest.is_sound:
                self._least = answer.bound if answer.bound is not None else self._least
            if answer.state is None:
                if answer.verdict == "infeasible" and self._nearest.is_sound and self._is_impossible():
                    self._ended = "nothing_fits"
                return
            self._is_proven = answer.verdict == "optimal" and self._nearest.is_sound
            yield answer.state

    def _is_impossible(self) -> bool:
        """Whether two more solves that are set up differently say so too."""
        left = max(1.0, self._until - time.monotonic())
        return anything_fits(self._problem, seconds=left, stop=self._stop).verdict == "infeasible"

    def _refuse(self, turn: int, state: State, verdict: Verdict) -> None:
        for finding in verdict.findings:
            self._refused.setdefault(finding.rule, turn)
        if turn < SINGLY:
            self._nearest.refuse(state)
            return
        for finding in verdict.findings:
            if finding.rule == "budget":
                self._nearest.save(state, round(_CENTS * finding.amount))
                continue
            blamed = [index for index, room in enumerate(self._problem.rooms) if room.name in finding.rooms]
            self._nearest.keep_off(state, blamed, within=min(_WIDEST, turn - SINGLY))

    def _found(self, layout: Layout) -> Improved:
        kept = self._set_back(layout)
        far_ft = distance_ft(self._case.rooms, self._sketch, kept)
        return replace(self._result("nearest" if self._is_proven else "near"), layout=kept, distance_ft=far_ft)

    def _set_back(self, layout: Layout) -> Layout:
        """Rooms that only the grid has moved stand as they were drawn, where the judge agrees."""
        for placed in layout.placements:
            drawn = self._sketch.of(placed.room)
            if drawn is not None and drawn != placed and self._is_nearly(drawn, placed):
                back = Layout(tuple(drawn if one.room == drawn.room else one for one in layout.placements))
                layout = back if self._case.judged(back).holds else layout
        return layout

    def _is_nearly(self, drawn: Placement, placed: Placement) -> bool:
        """Whether a room is less than a step of the grid from where it was drawn, and otherwise the same."""
        step_ft = self._problem.context.lattice.step_ft
        moved_ft = [abs(one - other) for one, other in zip(drawn.centre, placed.centre, strict=True)]
        room = next(room for room in self._case.rooms if room.name == drawn.room)
        return max(moved_ft) < step_ft and change_ft(room, drawn, placed) == 0

    def _result(self, status: Status) -> Improved:
        lattice = self._problem.context.lattice
        least = None if self._least is None else max(0.0, feet_of(lattice, self._least))
        return Improved(status, least_ft=least, refused=tuple(self._refused))
