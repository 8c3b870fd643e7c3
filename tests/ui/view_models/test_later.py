"""Held ground in words on the page."""

from dataclasses import replace
from types import SimpleNamespace

from optimizer.appraisal import outlooks
from optimizer.catalogue import book_for
from tests.optimizer.derived.futures.yard import HELD, derived, yard
from ui.view_models.later import later_figures
from ui.view_models.words import words_of

DRIVE = "{name: drive, at: [80, 0], width: 12}"


def figures(*changes, held=HELD):
    scenario = yard(*changes)
    option = SimpleNamespace(futures=outlooks(derived(scenario, held=held), book_for("USD")))
    return {figure.label.split(",")[0]: figure for figure in later_figures(option, words_of(scenario))}


def test_what_stays_possible():
    """Its way in, money in round figures, and the chance from which preparing pays."""
    tub = figures()["hot tub"]
    assert tub.label == "hot tub, on the water later"
    assert tub.value == "stays possible"
    assert tub.meaning.startswith(
        "Comes in from the drive by cart with the tub on edge. At today's prices: prepared now for $"
    )
    assert tub.meaning.endswith("%.")
    assert "00, it costs $" in tub.meaning


def test_what_does_not():
    """A pool a foot too near the boundary, of which no money is said, and a swim spa that no gate lets in."""
    pool = figures(held=replace(HELD, x_ft=3.0))["pool"]
    assert pool.value == "does not fit as it lies"
    assert pool.meaning == "1.0 ft are missing, by the west. Comes in from the drive by digger."
    barred = figures((DRIVE, DRIVE.replace("12", "6")))["swim spa"]
    assert barred.value == "by crane only"
    assert barred.meaning.startswith("Nothing drives in. At today's prices: prepared now for $")
