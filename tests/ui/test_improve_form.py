"""A layout of one's own that breaks rules is improved on the page: told, drawn, and taken into the yard."""

import json
from time import monotonic, sleep

import pytest

from optimizer.brief import Sketch, SketchedRoom
from optimizer.concepts import OptionSet
from optimizer.concepts.case import Case
from optimizer.concepts.sketched import sketched_option
from tests.sample_run import SEARCH, sample_scenario
from tests.ui.on_the_page import at, pressed, search_ended, version, words
from tests.ui.sample_concepts import write_ready
from ui.state import improvement_of, searching

PATCH = [{"op": "add", "path": "/options/count", "value": 9}]
TOLD = {
    "sketch": "mine",
    "answer": "This layout keeps the rules.",
    "measure": "Counted in feet.",
    "changes": ["quiet nook moved 4.0 ft to the east"],
    "plan": "sketch-01.svg",
    "ways_out": [{"text": "keep it as a sketch: mine, improved", "patch": PATCH}],
}


@pytest.fixture
def sketched(searches, tmp_path):
    """A search whose result is a sketch that breaks rules."""
    nook = SketchedRoom("quiet nook", (30.0, 40.0), 8.0, 7.0, "+y", "two chairs")
    option = sketched_option(Case.of(sample_scenario()), Sketch("mine", (nook,)), 1)
    assert option.findings
    write_ready(tmp_path, OptionSet((option,), SEARCH))
    (tmp_path / "improve.json").write_text(json.dumps(TOLD))
    searches("at_once", tmp_path)
    return tmp_path


def ended(tab):
    """The page after the search for a nearer layout has ended."""
    until = monotonic() + 30
    while improvement_of(version(tab)).is_running and monotonic() < until:
        sleep(0.1)
    tab.run()


def test_a_sketch_is_improved_and_kept(sketched, tab):
    """Told with what moved and drawn; what is done becomes a version and is searched."""
    search_ended(tab.run())
    at(tab, "hold")
    assert "What mine breaks" in words(tab)
    pressed(tab, "improve")
    found = improvement_of(version(tab))
    assert found.kind == "improve"
    assert searching().table.get(found.id).asked.further == ("--sketch=mine",)
    ended(tab)
    assert "Quiet nook moved 4.0 ft to the east." in words(tab)
    assert "Counted in feet." in words(tab)
    assert "Plan of the nearest layout" in words(tab)
    first = version(tab)
    pressed(tab, "do_0")
    assert version(tab).parent_id == first.id
    assert version(tab).what == "Keep it as a sketch: mine, improved."
    assert "count: 9" in version(tab).text


def test_what_was_said_of_another_sketch_is_not_shown(sketched, tab):
    """The answer is of the sketch that it names."""
    (sketched / "improve.json").write_text(json.dumps({**TOLD, "sketch": "other"}))
    search_ended(tab.run())
    at(tab, "hold")
    pressed(tab, "improve")
    ended(tab)
    assert "Quiet nook moved" not in words(tab)


def test_a_concept_has_nothing_to_improve(searches, tab, ready):
    """It breaks no rule."""
    search_ended(tab.run())
    at(tab, "hold")
    assert "improve" not in {button.key for button in tab.button}
