"""What each budget buys, from the command line."""

import json
from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.cli import main
from tests.sample_budgets import sample_budgets
from tests.sample_run import YARD


def call(capsys, *arguments):
    """Exit status, standard output and standard error of `budgets` with these arguments."""
    status = main(["budgets", *(str(argument) for argument in arguments)])
    out, err = capsys.readouterr()
    return status, out, err


@pytest.fixture
def found(monkeypatch):
    """Let the pipeline find what is given; it keeps what it was asked."""
    from optimizer import pipeline

    asked = []

    def say(result):
        monkeypatch.setattr(
            pipeline, "what_budgets_buy", lambda scenario, settings, **_: asked.append(settings) or result
        )
        monkeypatch.setattr(pipeline, "plan_drawing", lambda scenario, option: option.id)
        monkeypatch.setattr("optimizer.export.plan_svg", lambda drawing: f"<svg><title>{drawing}</title></svg>")
        return asked

    return say


def test_it_writes_and_prints(capsys, found, tmp_path):
    """Result, table, picture and plans are written; the steps go to standard output."""
    asked = found(sample_budgets())
    status, out, _ = call(capsys, YARD, "--out", tmp_path / "new", "--steps", 4, "--lowest", 50_000)
    assert status == 0
    names = {"budgets.json", "budgets.csv", "budgets.svg", "budget-01.svg", "budget-02.svg"}
    assert {path.name for path in (tmp_path / "new").iterdir()} == names
    assert (asked[0].points, asked[0].lowest, asked[0].highest) == (4, 50_000, None)
    for words in ("64,000", "95,000", "proven", "22", "the fire", "For about 31,000 USD more"):
        assert words in out


def test_events(capsys, found, tmp_path):
    """JSON lines for the page, the table goes to standard error."""
    found(sample_budgets())
    status, out, err = call(capsys, YARD, "--out", tmp_path, "--progress", "json")
    done = json.loads(out.splitlines()[-1])
    assert (status, done["event"], done["found"]) == (0, "done", 2)
    assert done["result"] == str(tmp_path / "budgets.json")
    assert "what each budget buys" in err


@pytest.mark.parametrize(
    ("low", "status", "words"), [(True, 3, "Nothing fits: what is required costs more"), (False, 4, "Undecided")]
)
def test_nothing_found(capsys, found, tmp_path, low, status, words):
    """The reason is said, the result is written, no picture."""
    found(replace(sample_budgets(), points=(), options=(), possible=() if low else ((Decimal(9), 1.0),)))
    exit_status, out, _ = call(capsys, YARD, "--out", tmp_path)
    assert exit_status == status
    assert words in out
    assert {path.name for path in tmp_path.iterdir()} == {"budgets.json", "budgets.csv"}


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--lowest", "90000", "--highest", "50000"), "--lowest up to --highest"),
        (("--highest", "-3"), "money above 0"),
        (("--highest", "nan"), "money above 0"),
        (("--steps", "0"), "--steps"),
    ],
)
def test_a_wrong_call(capsys, tmp_path, arguments, words):
    """One report, nothing written."""
    status, _, err = call(capsys, YARD, "--out", tmp_path / "none", *arguments)
    assert status == 2
    assert words in err
    assert not (tmp_path / "none").exists()
