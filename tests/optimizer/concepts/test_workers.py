"""The judge in other processes: the same words, and none is lost when a process dies."""

import os
import signal
import time

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.workers import Workers
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
    assert said == [CASE.judged(layout) for layout in layouts]


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
