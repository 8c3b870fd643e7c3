"""The stages of one run, in order."""

import math
import os
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import CENTS, Gathering
from optimizer.concepts.option import OptionSet, SearchRecord, SearchStatus
from optimizer.concepts.rounds import Rounds
from optimizer.concepts.whole import NOTHING_PROVEN, WORK_A_SECOND, Whole
from optimizer.concepts.whys.left_out import explained
from optimizer.concepts.whys.nothing import why_nothing
from optimizer.concepts.whys.trying import placeless_rooms
from optimizer.concepts.with_without import with_and_without
from optimizer.concepts.workers import Workers, results
from optimizer.engine.explorer import Explorer, board_of, mended
from optimizer.engine.problem import Problem, build_problem, layout_of, modelled_losses, state_of, what_fits
from optimizer.engine.prover import Answer, Budget, WholeProof, anything_fits
from optimizer.events import Emit, Event
from optimizer.layout import Layout

EXPLORED_BY: Final = 0.75
"""Share of the time after which nothing new is looked for, and what will be shown is polished."""
ROUNDS_A_SECOND: Final = 3.0
"""Rounds of a repeatable run, for each second that it is given: about as many as a machine with two cores does."""
TRIED_BEFORE_ASKING: Final = 9
"""Rounds without any layout, after which the whole model is asked whether there is one."""
MOST_SOLVERS: Final = 4
SHOWN_EVERY_S: Final = 2.0
"""How often the best so far is shown, if it has changed; ranking and writing it takes a tenth of a second."""
UNCHANGED: Final = 24
"""So many rounds without another set to show, with all of it proven, end a search before its time."""


Show = Callable[[OptionSet], None]
"""Takes the best so far, a result like one that a person has stopped."""


@dataclass(frozen=True, slots=True)
class ConceptRun:
    """What one call of the main job asks for; `start` are layouts to begin from. Reading the yard is not in `seconds`.

    `processes`: how many work beside this one; None: as many as there are further cores.
    """

    case: Case
    count: int
    seconds: float
    seed: int
    repeatable: bool
    start: tuple[Layout, ...] = ()
    processes: int | None = None
    solver_log: Path | None = None

    def run(self, *, emit: Emit, stop: threading.Event, show: Show | None = None) -> OptionSet:
        """Search until all is proven, time is up or a person stops it; `show` is given the best so far now and then."""
        _stage(emit, "reading the yard")
        with Workers(self.case, processes=self.processes) as workers:
            problem = build_problem(self.case.scenario, self.case.rooms, self.case.book)
            workers.read(problem)
            clock = Clock(stop, None if self.repeatable else time.monotonic() + self.seconds)
            return _Search(self, problem, workers, emit, stop, clock, show).found()


class _Search:
    """One search of a problem that is read."""

    def __init__(
        self,
        asked: ConceptRun,
        problem: Problem,
        workers: Workers,
        emit: Emit,
        stop: threading.Event,
        clock: Clock,
        show: Show | None,
    ) -> None:
        self.asked, self.problem, self.emit, self.stop, self.clock, self.show = asked, problem, emit, stop, clock, show
        self.explorer = Explorer(board_of(problem))
        self.gathering = Gathering(asked.case, problem, emit)
        work_s = WORK_A_SECOND * asked.seconds if asked.repeatable else None
        # With a limit of work one solver at a time, so that the proof does not depend on how many cores there are.
        solvers = 1 if asked.repeatable else max(1, min(MOST_SOLVERS, (os.cpu_count() or 1) - 2))
        budget = Budget(clock, work_s, solvers, asked.seed, asked.solver_log)
        self.whole = Whole(problem, budget)
        self.rounds = Rounds(self.gathering, self.explorer, workers, self.whole, asked.seed, asked.count, clock)
        self._told: WholeProof | None = None
        self._shown, self._shown_at = frozenset[Layout](), -SHOWN_EVERY_S

    def found(self) -> OptionSet:
        """All stages."""
        _stage(self.emit, "exploring")
        known = {layout: state_of(self.problem, layout) for layout in self.asked.start}
        changed = [what_fits(self.problem, layout) for layout, state in known.items() if state is None]
        if self.rounds.workers.count:
            self.whole.begin_early()
        self.rounds.first([s for s in known.values() if s], [mended(self.explorer.board, s) for s in changed if any(s)])
        self._explore(TRIED_BEFORE_ASKING)
        if not self.explorer.pool.best:
            answer = self._anything()
            found = self.whole.found() or tuple(filter(None, [answer.state]))
            if not found:
                return self._without_any(answer)
            self.rounds.first(found)
            self._explore()
        _stage(self.emit, "polishing")
        self._polish()
        return self._ranked(self.whole.proof)

    def _show(self) -> None:
        """Show the best so far, if it is another than the one shown last and that is a while ago."""
        if self.show is None or self.clock.elapsed_s - self._shown_at < SHOWN_EVERY_S:
            return
        layouts = frozenset(option.layout for option in self.gathering.chosen(self.asked.count))
        if layouts:  # ranked to look at, so that it waits for its turn whether they are others or not
            self._shown_at = self.clock.elapsed_s
        if layouts != self._shown:
            self._shown = layouts
            options = self.gathering.shown(self.asked.count)
            self.show(OptionSet(options, replace(self._record("bounded", NOTHING_PROVEN), stopped=True)))

    def _explore(self, most_without_any: float = math.inf) -> None:
        """Rounds until their share of the time is over, or all is proven and nothing changes any more; so many at most
        while there is no layout at all.
        """
        most = round(EXPLORED_BY * ROUNDS_A_SECOND * self.asked.seconds) if self.asked.repeatable else None
        lasted, unchanged, shown = 0.0, 0, frozenset[Layout]()
        if placeless_rooms(self.problem):
            return
        self._show()
        while not self.clock.is_past(EXPLORED_BY, sparing_s=lasted / 2) and (most is None or self.rounds.turn < most):
            began = time.monotonic()
            self.rounds.run_one()
            self._tell_bound()
            self._show()
            lasted = time.monotonic() - began
            if not self.explorer.pool.best and self.rounds.turn >= most_without_any:
                return
            now = self.rounds.proven_set() if self.whole.proof.is_proven else None
            unchanged, shown = (unchanged + 1, shown) if now == shown else (0, now or frozenset())
            if now and unchanged >= UNCHANGED:
                return

    def _tell_bound(self) -> None:
        proof = self.whole.proof
        if proof.state is not None and proof != self._told:
            self._told = proof
            self.emit(Event("bound", {"objective": proof.objective / CENTS, "bound": proof.bound / CENTS}))

    def _polish(self) -> None:
        """What will be shown, until the solver has seen all of it; while time is left more is looked for."""
        lasted = 0.0
        while not self.clock.is_past(1.0, sparing_s=lasted + self.rounds.growing_s):
            began = time.monotonic()
            if not self.rounds.is_settled:
                self.rounds.polish_one()
            elif self.asked.repeatable or (self.whole.proof.is_proven and self.rounds.proven_set()):
                break
            else:
                self.rounds.run_one()
            self._tell_bound()
            self._show()
            lasted = time.monotonic() - began
        self.rounds.finish()

    def _ranked(self, proof: WholeProof) -> OptionSet:
        case, found = self.asked.case, self.gathering
        advised = results(*self.rounds.workers.advise(found.shown(self.asked.count)))
        options = explained(case, self.problem, tuple(advised), found.options)
        if not options:
            return OptionSet((), self._record("undecided", NOTHING_PROVEN))
        compared = with_and_without(case, options, found.options)
        if proof.state is None:  # stopped before the proof began
            return OptionSet(options, self._record("bounded", NOTHING_PROVEN), with_without=compared)
        layout = layout_of(self.problem, proof.state)
        shown = next((option.id for option in options if option.layout.base == layout), None)
        record = self._record("proven" if proof.is_proven else "bounded", proof)
        return OptionSet(options, replace(record, option=shown), with_without=compared)

    def _record(self, status: SearchStatus, proof: WholeProof) -> SearchRecord:
        known = proof.state is not None
        terms = {} if proof.state is None else modelled_losses(self.problem, proof.state)
        return SearchRecord(
            status=status,
            objective=proof.objective / CENTS if known else None,
            bound=proof.bound / CENTS if known else None,
            terms=tuple((name, cents / CENTS) for name, cents in terms.items()),
            seconds=round(self.clock.elapsed_s, 2),
            seed=self.asked.seed,
            repeatable=self.asked.repeatable,
            stopped=self.stop.is_set(),
            arrangements_seen=len(self.explorer.pool.seen),
            processes=1 + self.rounds.workers.count,
            refused=tuple(f"{rule}, {len(times)} times: {times[0]}" for rule, times in self.gathering.refused.items()),
        )

    def _anything(self) -> Answer:
        """Ask the whole model for a layout that the explorer missed, or a proof that there is none."""
        _stage(self.emit, "asking whether anything fits")
        return anything_fits(self.problem, seconds=max(2.0, self.asked.seconds / 2), stop=self.stop)

    def _without_any(self, answer: Answer) -> OptionSet:
        self.whole.finish()
        if answer.verdict != "infeasible":
            return OptionSet((), self._record("undecided", NOTHING_PROVEN))
        _stage(self.emit, "asking why nothing fits")
        conflict = why_nothing(self.asked.case, self.problem, seconds=self.asked.seconds / 2, stop=self.stop)
        return OptionSet((), self._record("nothing_fits", NOTHING_PROVEN), conflict)


def _stage(emit: Emit, stage: str) -> None:
    emit(Event("stage", {"stage": stage}))
