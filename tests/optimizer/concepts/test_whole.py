"""The proof of the whole beside a search: the same as here, heard of as it goes on, and its faults are not lost."""

import os
import signal
import threading
import time
from functools import cache

import pytest

from optimizer.concepts import whole as whole_module
from optimizer.concepts.whole import Whole
from optimizer.engine.problem import modelled_value
from optimizer.engine.prover import Budget, SolverFault, WholeProof
from tests.explored import explored, states
from tests.tiny import every_state, tiny
from tests.yards import plain_rooms, plain_yard

YARD = plain_yard(ceiling=None)


@cache
def toured():
    """An explorer of the yard after a very short tour, made once it is asked for."""
    return explored(YARD, plain_rooms(), rebuilds=3)


def built():
    """Its problem."""
    return toured().board.problem


def start():
    """The worst layout that it passed."""
    return states(toured())[-1]


def never():
    """Nobody stops it."""
    return threading.Event()


def finished(*, beside, work_s=0.4):
    """A proof with a limit of work, ended."""
    whole = Whole(built(), Budget(never(), work_s))
    whole.begin(start(), beside=beside)
    assert whole.found() == ()
    return whole, whole.finish()


def test_beside_as_here():
    """So much work gives the same layouts, in the same order, and the same proof in a process of its own as here."""
    (here, found), (beside, others) = finished(beside=False), finished(beside=True)
    assert found == others != ()
    assert here.proof == beside.proof
    assert here.proof.objective == modelled_value(built(), found[-1]) < modelled_value(built(), start())


def test_it_is_heard_of_while_it_goes_on():
    """Without a limit of work a better layout and a bound are told within a few seconds, and it ends when asked to."""
    whole = Whole(built(), Budget(never()))
    whole.begin(start(), beside=True)
    found, until = [], time.monotonic() + 60
    while not (found and whole.proof.bound > 0) and time.monotonic() < until:
        found += whole.found()
        time.sleep(0.1)
    whole.finish()
    assert found
    assert 0 < whole.proof.bound <= whole.proof.objective <= modelled_value(built(), found[-1])


def test_begun_before_any_layout_is_known():
    """It proves by itself and stays a single process; with a limit of work it waits for a layout, so that it repeats."""
    whole = Whole(tiny("trips"), Budget(never()))
    whole.begin_early()
    begun = whole._process
    whole.begin(next(state for state in every_state(tiny("trips")) if None not in state), beside=True)
    assert whole._process is begun
    begun._process.join(60)
    whole.finish()
    assert whole.proof.is_proven
    repeating = Whole(tiny("trips"), Budget(never(), 0.4))
    repeating.begin_early()
    assert repeating._process is None


def test_a_proof_that_heard_of_no_layout_speaks_of_the_first(monkeypatch):
    """Stopped before it took any offer, its bound stands beside the layout that is known here."""
    whole = Whole(tiny("trips"), Budget(never()))
    whole.begin_early()
    start = next(state for state in every_state(tiny("trips")) if None not in state)
    monkeypatch.setattr(whole._process, "offer", lambda _state: None)
    whole.begin(start, beside=True)
    whole.finish()
    whole._process.proof = WholeProof(None, 10**14, 7)
    whole.finish()
    assert whole.proof == WholeProof(start, modelled_value(tiny("trips"), start), 7)


def test_what_was_proven_is_heard_after_its_end():
    """A better layout that comes when the proof has ended, and nobody reads it any more, does not drown the proof."""
    problem = tiny("trips")
    start = next(state for state in every_state(problem) if None not in state)
    whole = Whole(problem, Budget(never()))
    whole.begin(start, beside=True)
    whole._process._process.join(60)
    for _ in range(2):
        whole.begin(start, beside=True)
    whole.found()
    assert whole.proof.is_proven


def test_a_process_that_dies_takes_nothing_back():
    """Killed: what it had told stands, and the end is no fault."""
    whole = Whole(built(), Budget(never()))
    whole.begin(start(), beside=True)
    os.kill(whole._process._process.pid, signal.SIGKILL)
    whole.begin(start(), beside=True)
    assert whole.finish() == ()
    assert whole.proof.bound <= whole.proof.objective


def test_nothing_is_claimed_without_a_beginning():
    """Never begun, there is no proof and nothing to end."""
    whole = Whole(built(), Budget(never()))
    assert whole.finish() == ()
    assert whole.proof.state is None


def test_a_fault_is_raised_where_it_is_asked_for(monkeypatch):
    """What goes wrong in the proof is not swallowed."""

    class Failing:
        def __init__(self, *_):
            self.proof = whole_module.NOTHING_PROVEN

        def offer(self, _state):
            pass

        def run(self):
            raise SolverFault("a bound passes an objective", "the model")

    monkeypatch.setattr(whole_module, "BranchAndBound", Failing)
    whole = Whole(built(), Budget(never(), 0.1))
    whole.begin(start(), beside=False)
    with pytest.raises(SolverFault, match="passes"):
        whole.finish()


def test_the_solvers_log_is_kept_on_demand(tmp_path):
    """Each model that is asked stands in the file."""
    log = tmp_path / "solver.log"
    whole = Whole(built(), Budget(never(), 0.4, log_file=log))
    whole.begin(start(), beside=True)
    whole.finish()
    assert "CP-SAT" in log.read_text(encoding="utf-8")
