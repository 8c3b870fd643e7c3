"""Proofs and ways out that are tried once more: what is true is borne out, what is false is contradicted or not decided."""

import threading
import time
from dataclasses import replace

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.option import Conflict, LeftOut, OptionSet, Proof, WayOut
from optimizer.concepts.solved_again import solved_again
from optimizer.engine.explorer import board_of
from optimizer.engine.problem import build_problem, layout_of, modelled_value
from optimizer.engine.prover import BranchAndBound, Budget, polish, unproven
from optimizer.scenario import read_scenario
from tests.explored import explored, states
from tests.sample_run import SEARCH, sample_option
from tests.small_yard import SMALL

SECONDS = 40.0
"""More than any of them takes; what is true or false is known long before."""


@pytest.fixture(scope="module")
def proven():
    """A small yard with its best layout, which is proven the best of its arrangement and of all."""
    scenario = read_scenario(SMALL, "small.yaml")
    case = Case.of(scenario)
    problem = build_problem(scenario, case.rooms, case.book)
    start = states(explored(scenario, case.rooms, rebuilds=20))[0]
    search = BranchAndBound(problem, Budget(threading.Event()))
    search.offer(start)
    whole = search.run()
    best = polish(board_of(problem), whole.state, stop=threading.Event())
    assert whole.is_proven
    assert best.is_proven
    option = replace(
        sample_option(), layout=layout_of(problem, best.state), proof=proof_of(best), left_out=(), sketch=None
    )
    money = whole.objective / 100
    record = replace(SEARCH, status="proven", objective=money, bound=money, option=option.id)
    return case, problem, start, OptionSet((option,), record)


def proof_of(found):
    """What a result says of it."""
    return Proof("proven", found.objective / 100, found.bound / 100, found.fingerprint)


def doubts(case, result, seconds=SECONDS):
    """All doubts, as what they say and whether they are left undecided."""
    return list(solved_again(case, result, Clock(threading.Event(), time.monotonic() + seconds)))


def test_what_is_proven_is_proven_again(proven):
    case, _, _, result = proven
    assert doubts(case, result) == []


def test_without_time_nothing_is_borne_out(proven):
    """It is said to be undecided, not true."""
    case, _, _, result = proven
    found = doubts(case, result, seconds=0.0)
    assert found
    assert all(doubt.is_undecided for doubt in found)


def test_a_bound_that_a_layout_passes_is_contradicted(proven):
    """Of an arrangement, and of the whole: a false proof of a layout that is not the best."""
    case, problem, start, result = proven
    worse = unproven(board_of(problem), start)
    assert worse.objective > 100 * result.search.objective
    false = Proof("proven", worse.objective / 100, worse.objective / 100, "any")
    (option,) = result.options
    (said,) = doubts(case, replace(result, options=(replace(option, proof=replace(option.proof, bound=1e6)),)))
    assert "below its bound" in said.words
    assert not said.is_undecided
    other = replace(option, layout=layout_of(problem, start), proof=false)
    record = replace(result.search, objective=false.objective, bound=false.bound)
    found = doubts(case, OptionSet((other,), record))
    assert any("a layout counts" in doubt.words and not doubt.is_undecided for doubt in found)
    assert modelled_value(problem, start) == worse.objective


def test_that_nothing_fits_is_contradicted_by_a_layout(proven):
    case, _, _, result = proven
    (found,) = doubts(case, OptionSet((), replace(result.search, status="nothing_fits", objective=None, bound=None)))
    assert not found.is_undecided


def test_ways_out_are_tried_again(proven):
    """One that bears plans is borne out, by a concept that is shown or by a search; one that leaves nothing is not."""
    case, _, _, result = proven
    (option,) = result.options
    good = WayOut("more money", (("add", "/budget", {"ceiling": 2_000_000}),))
    bad = WayOut("next to no money", (("add", "/budget", {"ceiling": 1}),))
    for way, says in ((good, []), (bad, ["with the way out 'next to no money' nothing fits"])):
        told = replace(option, left_out=(LeftOut("pond", "", (way,)),))
        assert [doubt.words for doubt in doubts(case, replace(result, options=(told,)))] == says
    conflict = Conflict((), "", (good, bad))
    nothing = OptionSet((), replace(result.search, bound=None, objective=None), conflict)
    assert [doubt.is_undecided for doubt in doubts(case, nothing)] == [False]
