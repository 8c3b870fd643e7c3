"""The judge: refused layouts by stages, what holds with its figures, and the same in another process."""

import pickle
import subprocess
import sys
from dataclasses import replace

import pytest

from optimizer.concepts.case import Case
from optimizer.engine.problem import layout_of
from optimizer.layout import Layout
from tests.explored import explored, states
from tests.yards import tight_thimble

AGAIN = """
import pickle, sys
case, layouts = pickle.loads(sys.stdin.buffer.read())
sys.stdout.buffer.write(pickle.dumps([case.judged(layout) for layout in layouts]))
"""


@pytest.fixture(scope="module")
def case():
    return Case.of(tight_thimble())


@pytest.fixture(scope="module")
def layouts(case):
    """Layouts of a short tour, some that hold and some that do not."""
    explorer = explored(case.scenario, case.rooms, rebuilds=30)
    return [layout_of(explorer.board.problem, state) for state in states(explorer)[:12]]


def test_by_stages_as_in_full(case, layouts):
    """What is refused in full is refused by stages, with some of its findings; what holds has the same figures."""
    pairs = [(case.judged(layout), case.in_full(layout)) for layout in layouts]
    assert {verdict.holds for verdict, _ in pairs} == {True, False}
    for verdict, whole in pairs:
        assert verdict.holds == whole.holds
        assert set(verdict.findings) <= set(whole.findings)
        assert verdict == whole if verdict.holds else verdict.appraisal is None
        assert whole.measured.cost.total > 0
        assert whole.score > 0


def test_a_room_off_the_yard_is_not_measured(case, layouts):
    """It is refused for its place, and for nothing that only ways could tell."""
    first, *others = layouts[0].placements
    verdict = case.judged(Layout((replace(first, x_ft=first.x_ft - 500), *others)))
    assert "inside_setbacks" in {finding.rule for finding in verdict.findings}
    assert (verdict.appraisal, verdict.losses, verdict.score) == (None, (), float("inf"))


def test_another_process_says_the_same(project, case, layouts):
    """A case is sent and judges there as here; what it has worked out of the site is not sent along."""
    case.judged(layouts[0])
    sent = pickle.dumps((case, layouts))
    assert len(sent) < 100_000
    done = subprocess.run([sys.executable, "-c", AGAIN], input=sent, cwd=project, capture_output=True, check=True)
    assert pickle.loads(done.stdout) == [case.judged(layout) for layout in layouts]


def test_what_the_scenario_has_not(case, layouts):
    """A room under another name and one in a size that it has not, each of them and no other."""
    first, *others = layouts[0].placements
    strange = (replace(first, room="ballroom"), replace(first, choice="of no size"))
    assert case.unknown(layouts[0]) == ()
    assert case.unknown(Layout((*strange, *others))) == strange
