"""The judge at work: in this process, or in others beside it, so that all cores look at layouts."""

import os
from collections.abc import Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from types import TracebackType
from typing import Final, Self

from optimizer.concepts.beside import CONTEXT, mind_parent
from optimizer.concepts.case import Case, Verdict
from optimizer.layout import Layout

MOST_PROCESSES: Final = 4


class Judges:
    """Judges layouts in the order in which they are given. With no process beside this one they are judged here."""

    def __init__(self, case: Case, *, processes: int | None = None) -> None:
        """`processes` beside this one; None: as many as there are further cores, four at most."""
        self._case = case
        count = min(MOST_PROCESSES, (os.cpu_count() or 1) - 1) if processes is None else processes
        self._workers = _workers(case, count) if count > 0 else None
        self.count = 1 + max(0, count)

    def __enter__(self) -> Self:
        """Ready to judge."""
        return self

    def __exit__(
        self, _kind: type[BaseException] | None, _error: BaseException | None, _at: TracebackType | None
    ) -> None:
        """Let the processes go."""
        if self._workers is not None:
            self._workers.shutdown(wait=False, cancel_futures=True)

    def begin(self, layouts: Sequence[Layout]) -> "list[Pending]":
        """Start judging these layouts; their verdicts are asked for later, in any order."""
        return [Pending(self._case, layout, self._submitted(layout)) for layout in layouts]

    def _submitted(self, layout: Layout) -> "Future[Verdict] | None":
        if self._workers is None:
            return None
        try:
            return self._workers.submit(_judged, layout)
        except BrokenProcessPool:
            self._workers = None
            return None


class Pending:
    """A layout that is being judged."""

    def __init__(self, case: Case, layout: Layout, future: "Future[Verdict] | None") -> None:
        self._case, self.layout, self._future = case, layout, future

    def verdict(self) -> Verdict:
        """The judge's word, once it is there; where a process beside died, it is asked here."""
        if self._future is not None:
            try:
                return self._future.result()
            except BrokenProcessPool:
                pass
        return self._case.judged(self.layout)


_case: list[Case] = []


def _workers(case: Case, count: int) -> ProcessPoolExecutor:
    return ProcessPoolExecutor(count, mp_context=CONTEXT, initializer=_open, initargs=(case, os.getpid()))


def _open(case: Case, parent: int) -> None:
    mind_parent(parent)
    _case[:] = [case]


def _judged(layout: Layout) -> Verdict:
    return _case[0].judged(layout)
