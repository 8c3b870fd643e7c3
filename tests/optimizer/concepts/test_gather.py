"""Judging first, polishing what is shown."""

import threading
from dataclasses import replace

import pytest

from optimizer.concepts import Case, gather
from optimizer.concepts.gather import Gathering
from optimizer.events import to_nobody
from optimizer.instance import build_instance
from optimizer.scenario import load_scenario
from optimizer.search import Pool, Tour, board_of, explore

NEVER = threading.Event()


@pytest.fixture(scope="module")
def explored():
    """A small yard with what a short tour passes, best first."""
    case = Case.of(load_scenario("scenarios/ribbon-lane.yaml"))
    board, pool = board_of(build_instance(case.scenario, case.rooms, case.book)), Pool()
    explore(board, pool, Tour(40, seed=1, thrift=0.6), stop=NEVER)
    return case, board, [state for _, state in pool.ranked()]


def judged(explored, enough=4):
    """A gathering of the first states that hold."""
    case, board, states = explored
    gathered = Gathering(case, board, to_nobody)
    gathered.take(states, enough=enough, stop=NEVER)
    return gathered


def test_takes_no_more_than_enough(explored):
    """As many as asked for, none twice, and none that the check refuses."""
    gathered = judged(explored)
    assert len(gathered.options) == 4
    gathered.take([find.polished.state for find in gathered.found.values()], enough=9, stop=NEVER)
    assert len(gathered.options) == 4
    assert not any(gathered.case.judged(option.layout).findings for option in gathered.options)


def test_polish_never_worsens_the_exact_score(explored):
    """Finds keep their score or get a better one, each with a bound that is one; then nothing is left to polish."""
    gathered = judged(explored)
    before = sorted(option.score for option in gathered.options)
    assert gathered.polish(gathered.options, stop=NEVER)
    after = sorted(option.score for option in gathered.options)
    assert all(now <= was for now, was in zip(after, before, strict=True))
    assert sum(after) < sum(before)
    assert all(0 < option.proof.bound <= option.proof.objective for option in gathered.options)
    assert not gathered.polish(gathered.options, stop=NEVER)


def test_what_reality_refuses_polished_stays_as_it_was(explored, monkeypatch):
    """The layout as it was found, with the bound of its arrangement, which says that the model knows a better one."""
    gathered = judged(explored)
    layouts = {option.layout for option in gathered.options}
    real, refused = Case.judged, []
    fault = real(gathered.case, next(iter(layouts)))

    def refusing(case, layout):
        refused.append(layout)
        return replace(fault, findings=("refused",))

    monkeypatch.setattr(gather.Case, "judged", refusing)
    gathered.polish(gathered.options, stop=NEVER)
    assert refused
    assert {option.layout for option in gathered.options} == layouts
    bounded = [option.proof for option in gathered.options if option.proof.arrangement == "bounded"]
    assert len(bounded) >= len(refused)
    assert all(0 < proof.bound < proof.objective for proof in bounded)


def test_stopped_keeps_what_it_has(explored):
    """Once stopped, one layout that holds is enough, and nothing is polished."""
    case, board, states = explored
    stopped = threading.Event()
    stopped.set()
    gathered = Gathering(case, board, to_nobody)
    gathered.take(states, enough=4, stop=stopped)
    assert len(gathered.options) == 1
    assert not gathered.polish(gathered.options, stop=stopped)
