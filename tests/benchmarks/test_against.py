"""The engine, random restarts, the model alone and HiGHS on problems so small that the best of each is known."""

import pytest

from tests.benchmarks.against import ROOT, WAYS, at_random, main, mean_excess, objective, problem_with_no_guide
from tests.tiny import every_value, tiny


@pytest.mark.parametrize("name", ["trips", "rules"])
def test_highs_and_the_model_have_the_same_best(name):
    """Both find the least that any layout counts: the programme says what the model says."""
    problem = problem_with_no_guide(tiny(name))
    for way in ("model", "highs"):
        assert objective(problem, WAYS[way](problem, 20.0)) == min(every_value(name).values())


def test_what_is_put_together_at_random_keeps_the_rules():
    """A random layout is one of those that keep all rules, and no better than the best of them."""
    problem = problem_with_no_guide(tiny("rules"))
    found = at_random(problem, 0.2)
    assert every_value("rules")[found] == objective(problem, found)


def test_one_table_tells_all(capsys):
    """One line an instance, and the means."""
    assert main([str(ROOT / "tests/benchmarks/instances/discs-clay0203m.json"), "--seconds", "0.3"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in lines] == ["file", "discs-clay0203m", "mean"]


def test_the_mean_excess_of_the_best_is_nothing():
    """Nothing above the best is 0 %, twice and eight times the best are together four times it."""
    assert mean_excess([1.0, 1.0]) == pytest.approx(0)
    assert mean_excess([2.0, 8.0]) == pytest.approx(3.0)
