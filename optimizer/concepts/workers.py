"""Who judges, polishes and grows layouts: other processes, so that all cores work, or this one when it is asked."""

import os
import pickle
import tempfile
import threading
from collections.abc import Callable, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from functools import partial
from pathlib import Path
from types import TracebackType
from typing import Any, Final, Generic, Self, TypeVar

from optimizer.concepts.beside import CONTEXT, get_ready, mind_parent
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.clock import Clock
from optimizer.concepts.growth import Grown, grow
from optimizer.concepts.option import Option
from optimizer.engine.explorer import Board, board_of
from optimizer.engine.problem import Problem, State
from optimizer.engine.prover import ArrangementProof, polish
from optimizer.layout import Layout

MOST_PROCESSES: Final = 4
Said = TypeVar("Said")


class Pending(Generic[Said]):
    """Work that was handed over."""

    def __init__(self, here: Callable[[], Said], future: "Future[Said] | None") -> None:
        self._here, self._future = here, future
        self._said: list[Said] = []

    def hurry(self) -> None:
        """Do the work here unless a process has begun it: who needs it soon has nothing better to do."""
        if not self._said and (self._future is None or self._future.cancel()):
            self._said.append(self._here())

    def result(self) -> Said:
        """What came of it, once it is there; where the process died, the work is done here."""
        if not self._said and self._future is not None:
            with suppress(BrokenProcessPool):
                self._said.append(self._future.result())
        if not self._said:
            self._said.append(self._here())
        return self._said[0]


def results(*pending: Pending[Said]) -> list[Said]:
    """What came of all of it, in order. Processes take it from the front, and this one from the back."""
    hurry(pending)
    return [one.result() for one in pending]


def hurry(pending: Sequence[Pending[Any]]) -> None:
    """Do here what no process has begun, the last first, since processes take the first."""
    for one in reversed(pending):
        one.hurry()


class Workers:
    """Processes beside this one. What they say does not depend on how many they are."""

    def __init__(self, case: Case, *, processes: int | None = None) -> None:
        """`processes` beside this one; None: as many as there are further cores, four at most."""
        self._case = case
        self.count = min(MOST_PROCESSES, (os.cpu_count() or 1) - 1) if processes is None else max(0, processes)
        self._pool = _pool(case, self.count) if self.count else None
        self._board: Board | None = None
        self._problem_file: Path | None = None

    def __enter__(self) -> Self:
        """Ready to work."""
        return self

    def __exit__(
        self, _kind: type[BaseException] | None, _error: BaseException | None, _at: TracebackType | None
    ) -> None:
        """Let the processes go."""
        if self._pool is not None:
            self._pool.shutdown(cancel_futures=True)
        if self._problem_file is not None:
            self._problem_file.unlink(missing_ok=True)

    def read(self, problem: Problem) -> None:
        """Take the problem in which layouts are polished; it is big, so that it is handed over once, as a file."""
        self._board = board_of(problem)
        if self._pool is not None:
            with tempfile.NamedTemporaryFile(prefix="outdoor-rooms-", suffix=".problem", delete=False) as file:
                self._problem_file = Path(file.name)
                pickle.dump(problem, file, protocol=pickle.HIGHEST_PROTOCOL)

    def judge(self, layouts: Sequence[Layout]) -> list[Pending[Verdict]]:
        """Begin to judge layouts; their verdicts are asked for later, in any order."""
        return [self._begin(partial(self._case.judged, layout), _judged, layout) for layout in layouts]

    def polish(self, states: Sequence[State], *, stop: Clock) -> list[Pending[ArrangementProof]]:
        """Begin to polish states. What is polished when the time is up ends with what is proven by then."""
        board = self._board
        assert board is not None, "the problem was not read"
        return [
            self._begin(partial(polish, board, state, stop=stop), _polished, self._problem_file, state, stop.until)
            for state in states
        ]

    def grow(self, settled: Sequence[Grown], *, stop: Clock) -> list[Pending[Grown]]:
        """Begin to let rooms grow to lines. What is under way when the time is up ends with what is judged by then."""
        return [self._begin(partial(grow, self._case, one, stop=stop), _grown, one, stop.until) for one in settled]

    def advise(self, options: Sequence[Option]) -> list[Pending[Option]]:
        """Begin to add what is said of shown concepts only."""
        return [self._begin(partial(self._case.advised, option), _advised, option) for option in options]

    def _begin(self, here: Callable[[], Said], there: Callable[..., Said], *arguments: object) -> Pending[Said]:
        if self._pool is None:
            return Pending(here, None)
        try:
            return Pending(here, self._pool.submit(there, *arguments))
        except BrokenProcessPool:
            self._pool = None
            return Pending(here, None)


_case: list[Case] = []
_boards: dict[Path, Board] = {}


def _pool(case: Case, count: int) -> ProcessPoolExecutor:
    get_ready()
    return ProcessPoolExecutor(count, mp_context=CONTEXT, initializer=_open, initargs=(case,))


def _open(case: Case) -> None:
    mind_parent()
    _case[:] = [case]


def _judged(layout: Layout) -> Verdict:
    return _case[0].judged(layout)


def _advised(option: Option) -> Option:
    return _case[0].advised(option)


def _grown(settled: Grown, until: float | None) -> Grown:
    return grow(_case[0], settled, stop=Clock(threading.Event(), until))


def _polished(problem_file: Path, state: State, until: float | None) -> ArrangementProof:
    clock = Clock(threading.Event(), until)
    if problem_file not in _boards:
        # Written by the parent a moment ago, for this process alone to read.
        _boards[problem_file] = board_of(pickle.loads(problem_file.read_bytes()))  # noqa: S301
    return polish(_boards[problem_file], state, stop=clock)
