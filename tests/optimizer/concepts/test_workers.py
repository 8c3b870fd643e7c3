"""The judge in other processes: the same words, and none is lost when a process dies."""

import os
import signal
import threading
import time
from concurrent.futures import Future

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.workers import Workers, hurry, results
from optimizer.engine.problem import layout_of
from optimizer.scenario import load_scenario
from tests.explored import explored, states

CASE = Case.of(load_scenario("scenarios/thimble-yard.yaml"))


@pytest.fixture(scope="module")
def layouts():
    """A few layouts of the yard."""
    explorer = explored(CASE.scenario, CASE.rooms, rebuilds=10)
    return [layout_of(explorer.board.problem, state) for state in states(explorer)[:3]]


def test_beside_as_here(layouts):
    """What a process beside says is what the judge says here."""
    with Workers(CASE, processes=1) as workers:
        said = [pending.result() for pending in workers.judge(layouts)]
        options = [
            CASE.described(layout, verdict) for layout, verdict in zip(layouts, said, strict=True) if verdict.holds
        ]
        advised = [pending.result() for pending in workers.advise(2 * options)]  # here and beside
    assert said == [CASE.judged(layout) for layout in layouts]
    assert advised == 2 * [CASE.advised(option) for option in options] != []


def test_a_process_that_dies_costs_no_verdict(layouts):
    """Killed before it answers: the layouts are judged here, and so are later ones."""
    with Workers(CASE, processes=1) as workers:
        workers.judge(layouts)[0].result()
        pending = workers.judge(layouts)
        for process in list(workers._pool._processes.values()):
            os.kill(process.pid, signal.SIGKILL)
        time.sleep(0.2)
        assert [waiting.result() for waiting in pending] == [CASE.judged(layout) for layout in layouts]
        assert [waiting.result() for waiting in workers.judge(layouts)] == [CASE.judged(layout) for layout in layouts]


def test_none_beside(layouts):
    """With no process beside, the judge works when it is asked."""
    with Workers(CASE, processes=0) as workers:
        assert workers._pool is None
        assert [pending.result() for pending in workers.judge(layouts)] == [CASE.judged(layout) for layout in layouts]


class Busy:
    """A pool that has begun the first so many pieces of work that it was given, and never ends one by itself."""

    def __init__(self, begun):
        self.begun, self.given = begun, []

    def submit(self, *_):
        """Take it down."""
        future = Future()
        if len(self.given) < self.begun:
            future.set_running_or_notify_cancel()
        self.given.append(future)
        return future

    def shutdown(self, **_):
        """There is nothing to end."""


def test_what_no_process_has_begun_is_done_here(layouts, monkeypatch):
    """The last first, since processes take the first; what was begun beside is waited for, and nothing done twice."""
    here = []
    monkeypatch.setattr(Case, "judged", lambda _, layout: here.append(layout) or "here")
    with Workers(CASE, processes=0) as workers:
        workers._pool = pool = Busy(1)
        pending = workers.judge(layouts)
        hurry(pending)
        assert here == layouts[:0:-1]
        pool.given[0].set_result("beside")
        assert results(*pending) == ["beside", "here", "here"]
        assert len(here) == 2


@pytest.mark.parametrize("processes", [0, 1])
def test_libraries_are_read_ahead_for_processes_beside(processes, monkeypatch):
    """As soon as there will be any; where none is beside nobody reads them."""
    begun = []
    monkeypatch.setattr("optimizer.concepts.workers.get_ready", lambda: begun.append("libraries"))
    with Workers(CASE, processes=processes):
        assert begun == ["libraries"] * processes


@pytest.mark.parametrize("processes", [0, 1])
def test_no_polish_begins_after_its_time(processes):
    """Here and beside: once the time is up the solver is not asked, and the state stays as it was."""
    explorer = explored(CASE.scenario, CASE.rooms, rebuilds=10)
    state = states(explorer)[0]
    with Workers(CASE, processes=processes) as workers:
        workers.read(explorer.board.problem)
        for left_s, is_asked in ((-1.0, False), (60.0, True), (None, True)):
            clock = Clock(threading.Event(), None if left_s is None else time.monotonic() + left_s)
            (pending,) = workers.polish([state], stop=clock)
            proof = pending.result()
            assert (proof.fingerprint is not None) == is_asked
            assert is_asked or proof.state == state
