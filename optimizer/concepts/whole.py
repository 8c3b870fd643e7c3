"""The proof of the whole model beside the search, in a thread of its own: the search asks it now and then."""

import threading
from collections import deque
from typing import Final

from optimizer.engine.problem import Problem, State
from optimizer.engine.prover import BranchAndBound, Budget, WholeProof

WORK_A_SECOND: Final = 0.3
"""Deterministic solver time of a repeatable proof, for each second that the run is given."""


class Whole:
    """A proof that is under way. What goes wrong in its thread is raised where it ends."""

    def __init__(self, problem: Problem, *, seed: int, stop: threading.Event, work_s: float | None = None) -> None:
        """With `work_s` the proof waits until `finish`, and takes so much of the solver's deterministic time."""
        self._found: deque[State] = deque()
        self._search = BranchAndBound(problem, Budget(stop, work_s, seed=seed), self._found.append)
        self._is_put_off = work_s is not None
        self._thread: threading.Thread | None = None
        self._fault: Exception | None = None

    @property
    def proof(self) -> WholeProof:
        """What is proven so far."""
        return self._search.proof

    def begin(self, start: State) -> None:
        """Begin from a good layout, or hear of a better one."""
        self._search.offer(start)
        if self._thread is None and not self._is_put_off:
            self._thread = threading.Thread(target=self._run, daemon=True)
            self._thread.start()

    def found(self) -> tuple[State, ...]:
        """Layouts found since this was last asked."""
        return tuple(self._found.popleft() for _ in range(len(self._found)))

    def finish(self) -> WholeProof:
        """End with what is proven; a proof that was put off is made now."""
        if self._is_put_off:
            self._run()
        elif self._thread is not None:
            self._thread.join()
        if self._fault is not None:
            raise self._fault
        return self.proof

    def _run(self) -> None:
        try:
            self._search.run()
        except Exception as fault:  # noqa: BLE001 - raised again where the thread ends
            self._fault = fault
