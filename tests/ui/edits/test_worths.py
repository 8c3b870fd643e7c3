"""Worths from answers as changes of the file."""

from optimizer.scenario import read_scenario
from optimizer.worths import things_of
from tests.sample_run import sample_scenario
from ui.edits import with_worths, worth_changes


def test_worths_are_read_back_and_nothing_else_changes():
    """Of a written size and of a room that the catalogue sizes; comments stay, and what changed is told."""
    scenario = sample_scenario()
    things = things_of(scenario.brief)
    worths = [thing.worth for thing in things]
    worths[1], worths[3] = 7.0, 11.3
    text = with_worths(scenario.text, things, worths)
    after = read_scenario(text, "edited")
    assert [thing.worth for thing in things_of(after.brief)] == worths
    assert "worth: 7}" in text
    assert "# sized from its equipment" in text
    said = worth_changes(things, worths)
    assert said == "What you would miss: gathering area (table for eight) 9 → 7, outdoor kitchen 9 → 11.3"


def test_without_a_change_the_text_is_the_same():
    """And nothing is said."""
    sample = sample_scenario()
    scenario = read_scenario(sample.text.replace("worth: 6}", "worth: 6.0}"), "written otherwise")
    things = things_of(scenario.brief)
    worths = [thing.worth for thing in things]
    assert with_worths(scenario.text, things, worths) == scenario.text
    assert worth_changes(things, worths) == ""


def test_the_largest_changes_are_named():
    """Of four changes three by name, the largest first; the fourth, of a hundredth, is counted."""
    things = things_of(sample_scenario().brief)
    worths = [thing.worth * factor for thing, factor in zip(things, (1.01, 2, 1.1, 1.5), strict=False)]
    worths += [thing.worth for thing in things[len(worths) :]]
    said = worth_changes(things, worths)
    assert [said.index(f"{things[n].name} {things[n].worth:g}") for n in (1, 3, 2)] == sorted(
        said.index(f"{things[n].name} {things[n].worth:g}") for n in (1, 3, 2)
    )
    assert things[0].name not in said
    assert said.endswith(" and 1 more")
