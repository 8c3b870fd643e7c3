"""The best so far of a run that goes on: shown now and then, a result like that of a run that was stopped there."""

import threading
from itertools import pairwise

from optimizer.concepts import run as run_module
from optimizer.concepts.case import Case
from optimizer.concepts.run import ConceptRun
from optimizer.events import to_nobody
from optimizer.scenario import load_scenario

CASE = Case.of(load_scenario("scenarios/thimble-yard.yaml"))


def test_the_best_so_far_is_shown_whenever_it_is_another(monkeypatch):
    """Each time with concepts that hold, marked as stopped, and never the same ones twice in a row."""
    monkeypatch.setattr(run_module, "SHOWN_EVERY_S", 0.0)
    shown = []
    run = ConceptRun(CASE, count=2, seconds=2, seed=1, repeatable=True, processes=0)
    found = run.run(emit=to_nobody, stop=threading.Event(), show=shown.append)
    assert found.options
    assert shown
    assert all(each.search.stopped and each.search.bound is None for each in shown)
    assert all(CASE.judged(option.layout).holds for each in shown for option in each.options)
    layouts = [frozenset(option.layout for option in each.options) for each in shown]
    assert all(one != other for one, other in pairwise(layouts))


def test_it_is_not_shown_more_often_than_it_is_read(monkeypatch):
    """Within the time between two showings there is one at the most: ranking and writing takes its time."""
    monkeypatch.setattr(run_module, "SHOWN_EVERY_S", 1000.0)
    shown = []
    ConceptRun(CASE, count=2, seconds=1, seed=1, repeatable=True, processes=0).run(
        emit=to_nobody, stop=threading.Event(), show=shown.append
    )
    assert len(shown) == 1
