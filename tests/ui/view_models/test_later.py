"""Held ground in words on the page."""

from dataclasses import replace
from types import SimpleNamespace

from optimizer.appraisal import outlooks
from optimizer.catalogue import book_for
from tests.optimizer.derived.futures.yard import HELD, derived, yard
from ui.view_models.later import later_figures, later_words
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


def told(name, *changes, held=HELD, for_designer=False):
    scenario = yard(*changes)
    found = {one.future: one for one in outlooks(derived(scenario, held=held), book_for("USD"))}
    return later_words(found[name], scenario, for_designer=for_designer)


def test_one_future_in_full():
    """Its picture explained, three sums, the chance, and what comes before any digging."""
    pool = told("pool")
    assert pool.standing == "A later pool on the water later stays possible."
    assert pool.shows.startswith(
        "Dashed: water and deck, the pad of its equipment, its barrier; nothing of it is built"
    )
    assert "Brown: the way in of the digger." in pool.shows
    assert "Red" not in pool.shows
    assert "Figures" not in pool.shows
    assert "Figures" in told("pool", for_designer=True).shows
    assert [figure.label for figure in pool.money] == ["Prepared for now", "Later, prepared", "Later, unprepared"]
    assert all(figure.value.startswith("$") and figure.value.endswith("00") for figure in pool.money)
    assert pool.pays.startswith("Preparing pays if")
    assert "have lines in the ground marked" in pool.told[-1]


def test_one_that_misses_and_is_barred():
    """No money is said of it; red is what is too near and what bars."""
    narrow = (DRIVE, DRIVE.replace("12", "5"))
    pool = told("pool", narrow, held=replace(HELD, x_ft=3.0))
    assert pool.money == ()
    assert pool.pays == "Nobody prepares for what does not fit."
    assert "Red: what stands in the way and what is too near." in pool.shows
