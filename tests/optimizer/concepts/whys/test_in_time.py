"""A question keeps its time and its seed: nothing is begun that would end late, and every change has the seed asked for."""

import threading
import time

import pytest

from optimizer.concepts.picking import Picker
from optimizer.concepts.whys import ask
from optimizer.concepts.whys import cores as asked_of
from optimizer.concepts.whys.bindings import bindings_of
from optimizer.concepts.whys.changes import DEARER, required
from optimizer.concepts.whys.cores import SOLVE_S, Cores
from optimizer.concepts.whys.question import Question
from optimizer.concepts.whys.trying import FEW_TOURS, MANY_TOURS, Trial, tried
from optimizer.concepts.whys.ways_out import WaysOut
from optimizer.engine.explorer import Explorer
from optimizer.engine.prover import Answer
from optimizer.pipeline import WhySettings, why
from optimizer.scenario import read_scenario
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import TEXT, tiny

NEVER = threading.Event()


@pytest.mark.parametrize("text", [TEXT, TEXT.rpartition("options:")[0]])
def test_a_seed_is_in_every_changed_case(text, monkeypatch):
    """Whether the file speaks of options or not."""
    cases = []
    monkeypatch.setattr(ask, "answer", lambda asking, **_: cases.append(asking.case))
    why(read_scenario(text, "tiny.yaml"), WhySettings("nook", seed=5))
    scenario = cases[0].scenario
    assert scenario.brief.options.seed == 5
    assert patched(scenario, required(cases[0], "nook").patch).brief.options.seed == 5


def test_no_change_is_begun_that_would_end_late():
    """By how long the last one took to be read and asked of."""
    case = tiny()
    ways = WaysOut(case, until=time.monotonic() + 30, stop=NEVER)
    assert not ways.is_late
    assert ways.tried(required(case, "nook")).holds
    assert 0 < ways._lasted_s < 20
    ways._lasted_s = 31
    assert ways.is_late


@pytest.mark.parametrize(("left_s", "longest_s"), [(4.0, 2.0), (60.0, SOLVE_S), (0.1, None)])
def test_two_solves_end_in_time(left_s, longest_s, monkeypatch):
    """Each has half of what is left; with next to nothing left none is begun."""
    given = []
    undecided = Answer("undecided", None, None, None)
    monkeypatch.setattr(asked_of, "anything_fits", lambda _, seconds, stop: given.append(seconds) or undecided)
    case = tiny()
    bindings = bindings_of(case)
    cores = Cores(case, until=time.monotonic() + left_s, stop=NEVER)
    assert not cores.fits_nothing(bindings)
    assert all(0.1 < seconds <= longest_s for seconds in given)
    assert bool(given) == (longest_s is not None)
    assert cores.is_late == (longest_s is None)


@pytest.mark.parametrize(("has_judged", "ran"), [(False, FEW_TOURS), (True, MANY_TOURS)])
def test_a_few_tours_that_bring_nothing_to_the_judge_are_enough(has_judged, ran, monkeypatch):
    """The time is worth more to ways out; where anything was refused, all tours are run."""
    tours = []
    monkeypatch.setattr(Explorer, "run", lambda _, tour, **__: tours.append(tour))
    monkeypatch.setattr(Picker, "pick", lambda *_: [])
    monkeypatch.setattr(Trial, "has_judged", has_judged)
    assert not tried(tiny(), seconds=60, stop=NEVER, tours=MANY_TOURS).holds
    assert len(tours) == ran


def test_more_money_is_tried_where_no_plan_came_as_far_as_the_judge(monkeypatch):
    """Nothing is proven and nothing was refused: a higher ceiling is what may help, and no rule is named."""
    given = []
    monkeypatch.setattr(ask, "tried", lambda case, **_: Trial(case))
    monkeypatch.setattr(Cores, "fits_nothing", lambda *_: False)
    monkeypatch.setattr(WaysOut, "solved", lambda _, groups, **__: given.extend(groups) or ())
    found = ask.answer(ask.Asking(tiny(), Question("left out", "nook"), 5.0), stop=NEVER)
    assert not found.is_answered
    assert not found.rules
    assert [change.ceiling is not None for group in given for change in group] == [True] * len(DEARER)
