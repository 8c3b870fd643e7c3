"""A report runs every benchmark and says which failed."""

import importlib.util
from pathlib import Path

import pytest

from tests.benchmarks import report


@pytest.mark.parametrize("quick", [True, False])
def test_every_part_is_a_module(quick):
    """Each can be found, and the other tree goes to the one that compares."""
    parts = dict(report.parts(quick=quick, against=Path("other")))
    assert {"published", "agreement", "reproved", "rebuilds", "against", "growth"} <= set(parts)
    assert all(importlib.util.find_spec(f"tests.benchmarks.{name}") for name in parts)
    assert parts["rebuilds"][:2] == ("--against", "other")


def test_a_failure_is_named_and_the_rest_still_runs(monkeypatch, capsys):
    """Parts that end well are not named."""
    ran = []
    monkeypatch.setattr(report, "run", lambda part: ran.append(part[0]) or part[0] != "against")
    assert report.main(["--quick"]) == 1
    assert capsys.readouterr().out.strip() == "failed: against"
    assert ran[-1] == "growth"
