"""The engine, random restarts, the model alone and HiGHS on problems so small that the best of each is known."""

import pytest

from tests.benchmarks.against import ROOT, main, objective, problem_with_no_guide, shifted_mean
from tests.benchmarks.rivals import WAYS, at_random
from tests.tiny import every_value, tiny


@pytest.mark.parametrize("way", ["model", "highs"])
def test_highs_and_the_model_have_the_same_best(way):
    """Both find the least that any layout counts: the programme says what the model says."""
    problem = problem_with_no_guide(tiny("rules"))
    assert objective(problem, WAYS[way](problem, 20.0)) == min(every_value("rules").values())


def test_what_is_put_together_at_random_keeps_the_rules():
    """A random layout is one of those that keep all rules, and no better than the best of them."""
    problem = problem_with_no_guide(tiny("rules"))
    found = at_random(problem, 0.2)
    assert every_value("rules")[found] == objective(problem, found)


def test_one_table_tells_all(capsys):
    """One line an instance, and the means."""
    assert main([str(ROOT / "tests/benchmarks/instances/discs-clay0203m.json"), "--seconds", "0.3"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in lines] == ["file", "discs-clay0203m", "shifted"]


def test_the_mean_is_shifted():
    """Of equals it is their own; a ratio of seven beside a best counts three, where the plain mean has four."""
    assert shifted_mean([1.0, 1.0]) == pytest.approx(1)
    assert shifted_mean([1.0, 7.0]) == pytest.approx(3)
