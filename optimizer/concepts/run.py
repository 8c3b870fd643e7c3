"""The stages of one run, in order."""

import threading
import time
from dataclasses import dataclass
from functools import partial

from optimizer.concepts.case import Case
from optimizer.concepts.gather import CENTS, Gathering
from optimizer.concepts.nothing import why_nothing
from optimizer.concepts.varied import varied
from optimizer.events import Emit, Event
from optimizer.instance import build_instance
from optimizer.layout import Layout
from optimizer.options import Option, OptionSet, SearchRecord, SearchStatus, ranked, reason_for
from optimizer.search import Pool, State, anything_fits, board_of, bound_over_all, run_tours, state_of, take_first_tour

FIRST_TRIED, TRIED_A_CONCEPT, ENOUGH_A_CONCEPT = 4, 12, 3
"""Layouts judged after the first tour; at most, and found at most, for each concept wanted: some are refused, some
turn out alike."""
EXPLORED_BY, JUDGED_BY = 0.55, 0.8
"""Shares of the time after which the next stage has its turn, however slow the machine is."""


@dataclass(frozen=True, slots=True)
class ConceptRun:
    """What one call of the main job asks for; `start` is a layout to begin from."""

    case: Case
    count: int
    seconds: float
    seed: int
    repeatable: bool
    start: tuple[Layout, ...] = ()

    def run(self, *, emit: Emit, stop: threading.Event) -> OptionSet:
        """Search until the set is full, time is up or a person stops it."""
        began = time.monotonic()
        clock, explored, judged = (self._deadline(stop, began, share) for share in (1.0, EXPLORED_BY, JUDGED_BY))
        _stage(emit, "reading the yard")
        instance = build_instance(self.case.scenario, self.case.rooms, self.case.book)
        board = board_of(instance)
        pool = Pool()
        gathered = Gathering(self.case, board, emit)
        _stage(emit, "exploring")
        starts = [state for layout in self.start if (state := state_of(instance, layout)) is not None]
        take_first_tour(board, pool, seed=self.seed, stop=clock, starts=starts)
        gathered.take(_first(starts, pool), enough=1, stop=clock)
        run_tours(board, pool, seed=self.seed, stop=explored)
        if not pool.best:
            return self._without_any(gathered, clock, stop, began)
        _stage(emit, "judging")
        states = varied(board, [state for _, state in pool.ranked()], diagonal_ft=self.case.diagonal_ft)
        gathered.take(states[: self.count * TRIED_A_CONCEPT], enough=self.count * ENOUGH_A_CONCEPT, stop=judged)
        _stage(emit, "polishing")
        while gathered.polish(self._shown(gathered), stop=clock):
            pass  # what is polished may change what is shown
        bound = self._bound(gathered, clock, began)
        return self._ranked(gathered, bound, len(pool.seen), stop, began)

    def _deadline(self, stop: threading.Event, began: float, share: float) -> "Deadline":
        return Deadline(stop, None if self.repeatable else began + share * self.seconds)

    def _bound(self, gathered: Gathering, clock: "Deadline", began: float) -> float | None:
        """Money below which no layout of the model can lie; None where it was not asked for."""
        left_s = self.seconds - (time.monotonic() - began)
        best = gathered.best
        if best is None or self.repeatable or left_s < 1 or clock.is_set():
            return None
        _stage(gathered.emit, "bounding")
        answer = bound_over_all(gathered.board.instance, best.state, seconds=left_s, stop=clock)
        if answer.bound is None:
            return None
        bound = min(answer.bound, best.objective) / CENTS
        gathered.emit(Event("bound", {"objective": best.objective / CENTS, "bound": bound}))
        return bound

    def _shown(self, gathered: Gathering) -> tuple[Option, ...]:
        say = partial(reason_for, currency=self.case.book.currency, units=self.case.scenario.units)
        return ranked(gathered.options, count=self.count, diagonal_ft=self.case.diagonal_ft, say=say)

    def _ranked(
        self, gathered: Gathering, bound: float | None, seen: int, stop: threading.Event, began: float
    ) -> OptionSet:
        options = tuple(map(self.case.with_remedies, self._shown(gathered)))
        best = gathered.best
        objective = None if best is None else best.objective / CENTS
        status: SearchStatus = "undecided" if objective is None else "bounded"
        if objective is not None and bound is not None and bound >= objective - 0.005:
            status = "proven"
        record = SearchRecord(
            status=status,
            objective=objective,
            bound=bound,
            terms=options[0].losses if options else (),
            seconds=round(time.monotonic() - began, 2),
            seed=self.seed,
            repeatable=self.repeatable,
            stopped=stop.is_set(),
            arrangements_seen=seen,
            refused=tuple(gathered.refused),
        )
        return OptionSet(options, record)

    def _without_any(self, gathered: Gathering, clock: "Deadline", stop: threading.Event, began: float) -> OptionSet:
        """Ask the whole model: a layout that the explorer missed, a proof that there is none, or neither."""
        _stage(gathered.emit, "asking whether anything fits")
        answer = anything_fits(gathered.board.instance, seconds=max(2.0, self.seconds / 2), stop=stop)
        if answer.state is not None:
            gathered.take([answer.state], enough=1, stop=clock)
        found = self._ranked(gathered, None, 0, stop, began)
        if answer.verdict != "infeasible":
            return found
        _stage(gathered.emit, "asking why nothing fits")
        conflict = why_nothing(self.case, gathered.board.instance, seconds=self.seconds / 2, stop=stop)
        record = SearchRecord(
            status="nothing_fits",
            objective=None,
            bound=None,
            terms=(),
            seconds=round(time.monotonic() - began, 2),
            seed=self.seed,
            repeatable=self.repeatable,
            stopped=stop.is_set(),
            arrangements_seen=0,
        )
        return OptionSet((), record, conflict)


class Deadline(threading.Event):
    """Set when a person asks to stop, or when the time is up."""

    def __init__(self, stop: threading.Event, until: float | None) -> None:
        super().__init__()
        self._asked, self._until = stop, until

    def is_set(self) -> bool:
        """Whether to stop."""
        return self._asked.is_set() or (self._until is not None and time.monotonic() > self._until)


def _first(starts: list[State], pool: Pool) -> list[State]:
    return [*starts, *(state for _, state in pool.ranked())][: FIRST_TRIED + len(starts)]


def _stage(emit: Emit, stage: str) -> None:
    emit(Event("stage", {"stage": stage}))
