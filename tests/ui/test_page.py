"""The page as a person goes through it, on a made-up search."""

from dataclasses import replace
from importlib import import_module
from time import monotonic, sleep

import pytest

from optimizer.check import Finding
from optimizer.concepts import OptionSet
from tests.sample_run import NOTHING_FITS, UNDECIDED
from tests.ui.on_the_page import in_part, named, same_address, search_ended, words
from tests.ui.sample_concepts import sample_concepts, write_ready


def test_start_shows_what_was_read(searches, tab):
    """The first yard is read and told before anything is searched, with the caution."""
    tab.run()
    assert not tab.exception
    assert "$130,000 for phase 1, 15% for surprises included" in words(tab)
    assert "Decision support at concept stage" in words(tab)
    assert tab.button(key="find").label == "Find concepts"


def test_every_demonstration_yard_can_be_chosen(searches, tab):
    """Each demonstration yard loads without a problem."""
    tab.run()
    names = tab.radio(key="scenario_name").options[:-2]
    assert len(names) >= 5
    for name in names:
        tab.radio(key="scenario_name").set_value(name).run()
        assert not tab.exception
        assert not tab.error


def test_wrong_file_is_told_line_by_line(searches, tab):
    """An own file with two mistakes shows both with their places, and cannot be searched."""
    tab.run()
    tab.radio(key="scenario_name").set_value("A file of mine").run()
    assert not [button for button in tab.button if button.key == "find"]
    tab.get("file_uploader")[0].set_value(
        ("mine.yaml", b"schema_version: 1\nname: 3\ncolour: red\n", "text/yaml")
    ).run()
    assert "problems, line by line" in words(tab)
    assert "mine.yaml:3:" in words(tab)
    assert not [button for button in tab.button if button.key == "find"]


def test_file_over_one_megabyte_is_refused(searches, tab):
    """An own file of more than 1 MB is refused with its size."""
    tab.run()
    tab.radio(key="scenario_name").set_value("A file of mine").run()
    tab.get("file_uploader")[0].set_value(("big.yaml", b"#" * 1_200_000, "text/yaml")).run()
    assert "at most 1 MB, found 1.2 MB" in words(tab)


def test_concepts_come_in_order_and_the_first_is_open(searches, tab):
    """After the search the list has all concepts, best first, and the sheet shows the first."""
    search_ended(tab.run())
    assert [button.label for button in tab.button if button.key.startswith("open_")] == [
        f"Open Concept {rank}" for rank in (1, 2, 3, 4)
    ]
    assert tab.header[0].value == "Concept 1"
    assert "Without fire feature and water reserve" in words(tab)
    assert "What is built now costs" in words(tab)
    in_part(tab, "Rules")
    assert "nothing better exists with these rooms in this arrangement" in words(tab)


def test_layouts_of_ones_own_come_after_the_concepts(searches, tab, tmp_path):
    """They are no concepts, are opened like them, and say what they break."""
    concepts = sample_concepts()
    overlap = Finding(
        "no_overlap", ("quiet nook", "fire feature"), 12.0, "sq ft", "quiet nook and fire feature overlap"
    )
    own = replace(
        concepts.options[2],
        id="sketch-01",
        rank=None,
        proof=None,
        sketch="first idea",
        findings=(overlap,),
        differs_by=None,
    )
    write_ready(tmp_path, replace(concepts, options=(*concepts.options, own)))
    searches("at_once", tmp_path)
    search_ended(tab.run())
    labels = [button.label for button in tab.button if button.key.startswith("open_")]
    assert labels == [*(f"Open Concept {rank}" for rank in (1, 2, 3, 4)), "Open Sketch: first idea"]
    assert "4 concepts after" in words(tab)
    assert "Layouts of your own" in [heading.value for heading in tab.subheader]
    tab.button(key="open_sketch-01").click().run()
    assert tab.header[0].value == "Sketch: first idea"
    assert "Quiet nook and fire feature overlap" in words(tab)


def test_opening_puts_the_concept_in_the_address(searches, tab):
    """Opening the third concept shows its sheet, says that it is not proven, and the address names it."""
    search_ended(tab.run())
    tab.button(key="open_3").click().run()
    assert tab.header[0].value == "Concept 3"
    assert named(tab, "concept").endswith(".c3")
    in_part(tab, "Rules")
    assert "Not proven" in words(tab)
    assert "nothing better exists" not in words(tab)


def test_address_opens_a_concept_in_a_new_tab(searches, tab, project):
    """A tab that is opened with the address of another shows the same concept, without a search of its own."""
    search_ended(tab.run())
    tab.button(key="open_2").click().run()
    in_part(tab, "Before you build")
    other = same_address(tab, project)
    assert other.header[0].value == "Concept 2"
    assert "What is built now costs" not in words(other)
    assert sample_concepts().options[1].cautions[0] in words(other)


@pytest.mark.parametrize("version", ["77", "gone", "-1", "9" * 40])
def test_address_of_lost_work_is_told(searches, tab, version):
    """An address that names what is not kept here says so, and offers the start."""
    tab.query_params["version"] = version
    tab.run()
    assert "not kept here" in tab.warning[0].value
    assert tab.button(key="find").label == "Find concepts"


def test_two_concepts_side_by_side(searches, tab, monkeypatch):
    """Put beside another, two concepts show what differs and what is the same; the note waits until it is asked for."""
    view, written = import_module("ui.components.comparison_view"), []
    monkeypatch.setattr(view, "revision_note", lambda *given: written.append(given) or "")
    search_ended(tab.run())
    beside(tab, "c3")
    assert not written
    assert "$7,900" in words(tab)
    assert "left out" in words(tab)
    assert "The same in both" in words(tab)


def beside(tab, concept):
    """Put a concept beside the opened one."""
    box = next(box for box in tab.selectbox if box.key.startswith("beside_"))
    box.select(f"{box.key.removeprefix('beside_').partition('.')[0]}.{concept}").run()
    assert not tab.exception
    assert named(tab, "beside").endswith(concept)


def test_side_by_side_holds_in_every_picture(searches, tab):
    """Two concepts are compared on the ground as on the plan: the one choice of picture is of both."""
    search_ended(tab.run())
    beside(tab, "c3")
    tab.segmented_control(key="picture").set_value("Ground").run()
    assert not tab.exception
    drawn = words(tab)
    assert 'alt="Concept 1: ground' in drawn
    assert 'alt="Concept 3: ground' in drawn


def test_one_choice_of_picture_holds_for_all_concepts(searches, tab, project):
    """The next concept opens in the same picture, and so does a link to it."""
    search_ended(tab.run())
    tab.segmented_control(key="picture").set_value("Ground").run()
    tab.button(key="open_3").click().run()
    assert 'alt="Concept 3: ground' in words(tab)
    assert 'alt="Concept 3: ground' in words(same_address(tab, project))


def test_concepts_appear_while_the_search_runs_and_stop_keeps_them(searches, tab):
    """A running search shows what it has found, and concepts that can be opened; stopped, it shows them, too."""
    searches("until_stopped")
    tab.run()
    tab.button(key="find").click().run()
    end = monotonic() + 10
    while "3 concepts so far" not in words(tab) and monotonic() < end:
        sleep(0.1)
        tab.run()
    assert "Exploring" in words(tab)
    assert "best so far $23,869" in words(tab)
    tab.button(key="open_2").click().run()
    assert tab.header[0].value == "Concept 2"
    tab.button(key="stop_search").click().run()
    while "Searching" in words(tab) and monotonic() < end:
        sleep(0.1)
        tab.run()
    assert tab.header[0].value == "Concept 2"
    assert "4 concepts after" in words(tab)


def test_another_yard_goes_back_to_the_start_and_this_one_is_kept(searches, tab):
    """From the concepts the page goes back to the choice of a yard, where this one can be gone on with."""
    search_ended(tab.run())
    tab.button(key="another").click().run()
    assert tab.button(key="find").label == "Find concepts"
    assert "version" not in tab.query_params
    kept = next(button for button in tab.button if button.key.startswith("kept_"))
    assert kept.label.startswith("Fernhollow Court")
    kept.click().run()
    assert tab.header[0].value == "Concept 1"


def ended_with(searches, tab, folder, option_set: OptionSet):
    """Run a search that ends with this."""
    write_ready(folder, option_set)
    searches("at_once", folder)
    return words(search_ended(tab.run()))


def test_nothing_fits_is_told_with_its_reason(searches, tab, tmp_path):
    """Where nothing fits, the page says which rules clash, in words."""
    said = ended_with(searches, tab, tmp_path, NOTHING_FITS)
    assert "Nothing fits" in said
    assert "the fire feature has no place" in said
    assert "Fire keeps its distance. For fire feature." in said


def test_undecided_asks_for_more_time(searches, tab, tmp_path):
    """Where nothing was found in the time given, the page says so and claims nothing."""
    said = ended_with(searches, tab, tmp_path, UNDECIDED)
    assert "nothing was found and nothing was ruled out" in said


def test_refused_scenario_is_told_in_the_words_of_the_command(searches, tab):
    """A search that ends without a result shows the problems that the command told."""
    searches("refused")
    assert "expected a boundary, found none; give its corners" in words(search_ended(tab.run()))


def test_result_that_cannot_be_read_is_told(searches, tab, tmp_path):
    """A result of a newer format is refused by name, without a traceback."""
    (tmp_path / "options.json").write_text('{"format": "outdoor-rooms/options/99"}')
    searches("at_once", tmp_path)
    assert "outdoor-rooms/options/99" in words(search_ended(tab.run()))


def budgets_found(tab):
    """Ask what each budget buys, and wait until that is found."""
    tab.segmented_control(key="step").set_value("budgets").run()
    return search_ended(tab, button="find_budgets")


def test_what_each_budget_buys_is_found_on_demand(searches, tab):
    """From the concepts to the budgets: a step each, what it buys and what the next thing costs, and back."""
    budgets_found(search_ended(tab.run()))
    assert tab.segmented_control(key="budget_step").options == ["$64,000", "$95,000 (your limit buys this)"]
    assert "$31,000 more than the step before: fire feature (six seats)" in words(tab)
    tab.segmented_control(key="budget_step").set_value("budget-01").run()
    assert "About $64,000, within $64,000" in words(tab)
    assert "For $31,000 more: fire feature (six seats)" in words(tab)
    tab.segmented_control(key="step").set_value("choose").run()
    assert tab.header[0].value == "Concept 1"


def test_the_address_opens_the_budgets_in_a_new_tab(searches, tab, project):
    """Another tab with the same address shows the same budget without a search of its own."""
    budgets_found(search_ended(tab.run()))
    tab.segmented_control(key="budget_step").set_value("budget-01").run()
    assert "About $64,000, within $64,000" in words(same_address(tab, project))


def test_budgets_that_found_nothing_say_what_the_command_said(searches, tab):
    search_ended(tab.run())
    searches("refused")
    budgets_found(tab)
    assert "No budget was found that works" in words(tab)
    assert "expected a boundary, found none" in words(tab)
