"""The proof of the whole model beside the search: in a process of its own, or when it is asked for."""

import threading
from contextlib import suppress
from dataclasses import replace
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Final

from optimizer.concepts.beside import CONTEXT, mind_parent
from optimizer.engine.problem import Problem, State, modelled_value
from optimizer.engine.prover import BranchAndBound, Budget, WholeProof

WORK_A_SECOND: Final = 0.3
"""Deterministic solver time of a repeatable proof, for each second that the run is given."""
_TOLD_EVERY_S = 0.2
_JOINED_S = 5.0
NOTHING_PROVEN: Final = WholeProof(None, 0, 0)


class Whole:
    """A proof that is under way. With a limit of work it is heard of at its end only, so that what is done beside it
    does not depend on the clock.
    """

    def __init__(self, problem: Problem, budget: Budget) -> None:
        self._problem, self._budget, self._waits = problem, budget, budget.work_s is not None
        self._process: _Beside | None = None
        self._start: State | None = None
        self.proof = NOTHING_PROVEN

    def begin_early(self) -> None:
        """Begin in a process before any layout is known, unless what it says must repeat."""
        if self._process is None and not self._waits:
            self._process = _Beside(self._problem, self._budget, None)

    def begin(self, start: State, *, beside: bool) -> None:
        """Begin from a good layout; once begun, hear of a better one."""
        if self._process is not None:
            if not self._waits:
                self._process.offer(start)
        elif self._start is None and beside:
            self._process = _Beside(self._problem, self._budget, start)
        self._start = self._start or start

    def found(self) -> tuple[State, ...]:
        """Layouts found since this was last asked."""
        if self._process is None or self._waits:
            return ()
        self._process.listen()
        self.proof = self._process.proof or self.proof
        return self._process.taken()

    def finish(self) -> tuple[State, ...]:
        """End it: layouts found since this was last asked. Raises what went wrong in the proof."""
        if self._process is not None:
            self._process.finish(self._budget.stop, waits=self._waits)
            self.proof = self._with_start(self._process.proof or self.proof)
            return self._process.taken()
        if self._start is None:
            return ()
        found: list[State] = []
        search = BranchAndBound(self._problem, self._budget, found.append)
        search.offer(self._start)
        self.proof = search.run()
        return tuple(found)

    def _with_start(self, proof: WholeProof) -> WholeProof:
        """A process that ended before it heard of any layout knows none."""
        if proof.state is not None or self._start is None:
            return proof
        return replace(proof, state=self._start, objective=modelled_value(self._problem, self._start))


class _Beside:
    """The process, and what it has said so far."""

    def __init__(self, problem: Problem, budget: Budget, start: State | None) -> None:
        self._here, there = CONTEXT.Pipe()
        limits = (budget.work_s, budget.workers, budget.seed, budget.log_file)
        arguments = (problem, limits, start, there)
        self._process = CONTEXT.Process(target=_prove, args=arguments, daemon=True)
        self._process.start()
        there.close()
        self._found: list[State] = []
        self._fault: Exception | None = None
        self._is_over = False
        self.proof: WholeProof | None = None

    def offer(self, state: State) -> None:
        """Tell it of a better layout."""
        self._send(state)

    def listen(self, *, timeout_s: float = 0.0) -> None:
        """Take in what it has said. A process that died has said nothing more."""
        try:
            while not self._is_over and self._here.poll(timeout_s):
                said = self._here.recv()
                if isinstance(said, WholeProof):
                    self.proof = said
                elif isinstance(said, Exception):
                    self._fault = said
                else:
                    self._found.append(said)
                timeout_s = 0.0
        except (EOFError, OSError):
            self._is_over = True

    def taken(self) -> tuple[State, ...]:
        """Layouts that it has found since the last time. Raises what went wrong."""
        if self._fault is not None:
            raise self._fault
        found, self._found = tuple(self._found), []
        return found

    def finish(self, stop: threading.Event, *, waits: bool) -> None:
        """Hear it to its end, which is now unless it waits for its work to be done."""
        while waits and not self._is_over and not stop.is_set():
            self.listen(timeout_s=_TOLD_EVERY_S)
        self._send(None)
        self._process.join(_JOINED_S)
        self.listen()
        if self._process.is_alive():
            self._process.kill()

    def _send(self, said: State | None) -> None:
        with suppress(OSError):  # it has ended; what it said before is still to be heard
            self._here.send(said)


Limits = tuple[float | None, int, int, Path | None]
"""A budget without the event that stops it, which is each process's own."""


def _prove(problem: Problem, limits: Limits, start: State, there: Connection) -> None:
    """What the process does: prove, and tell of every better layout and bound."""
    mind_parent()
    stop = threading.Event()
    search = BranchAndBound(problem, Budget(stop, *limits), there.send)
    if start is not None:
        search.offer(start)
    threading.Thread(target=_listen, args=(search, there, stop), daemon=True).start()
    over = threading.Event()
    telling = threading.Thread(target=_tell, args=(search, there, over), daemon=True)
    telling.start()
    try:
        search.run()
    except Exception as fault:  # noqa: BLE001 - raised again where the proof is asked for
        there.send(fault)
    over.set()
    telling.join()
    there.send(search.proof)
    there.close()


def _listen(search: BranchAndBound, there: Connection, stop: threading.Event) -> None:
    """Layouts that are offered, until nothing more is wanted."""
    try:
        while (offered := there.recv()) is not None:
            search.offer(offered)
    except (EOFError, OSError):
        pass
    stop.set()


def _tell(search: BranchAndBound, there: Connection, over: threading.Event) -> None:
    told = None
    while not over.wait(_TOLD_EVERY_S):
        if search.proof != told:
            told = search.proof
            there.send(told)
