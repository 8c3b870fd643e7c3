"""The steps beside choosing, as a person goes through them: wishes, finalists, budgets, results, and two tabs."""

import json
from importlib import import_module

from tests.ui.on_the_page import at, named, opened, pressed, same_address, search_ended, version, words
from ui.state import searching, store


def test_the_strip_has_the_yards_name_and_its_limit(searches, tab):
    """In an owner's words, and in the trade's for a designer."""
    opened(tab)
    assert "<h1>Fernhollow Court</h1>" in words(tab)
    assert "All-in limit $130,000" in words(tab)
    tab.toggle(key="for_designer").set_value(True).run()
    assert "Ceiling $130,000" in words(tab)


def test_answers_become_a_version_and_the_search_goes_on_from_what_is_there(searches, tab):
    """Limit, standing and materials are saved with the search, which begins from the concepts found before."""
    search_ended(tab.run())
    first = version(tab)
    at(tab, "yard")
    tab.number_input(key=f"ceiling_{first.id}").set_value(140_000).run()
    tab.segmented_control(key=f"standing_2_{first.id}").set_value("later").run()
    tab.pills(key=f"levels_{first.id}").set_value(["good", "fine"]).run()
    tab.segmented_control(key=f"level_good_fine_{first.id}").set_value("fine").run()
    of_levels = "materials to compare: good, fine; concepts in fine materials"
    assert f"Changed: All-in limit 140,000; fire feature: later; {of_levels}." in words(tab)
    search_ended(tab)
    now = version(tab)
    assert now.parent_id == first.id
    assert "ceiling: 140000 " in now.text
    assert 'levels: [good, fine], level: "fine"' in now.text
    assert "All-in limit $140,000" in words(tab)
    found = searching().newest(now)
    assert found.record.start_from == searching().newest(first).id


def test_answers_that_cannot_be_are_told_and_nothing_is_saved(searches, tab):
    """Fewer guests at a party than every day: the reader's own words, and no button to search."""
    opened(tab)
    key = version(tab).id
    tab.number_input(key=f"party_{key}").set_value(2).run()
    assert "So it cannot be searched" in words(tab)
    assert "2 at the party, 4 every day" in words(tab)
    assert not [button for button in tab.button if button.key in {"find", "save"}]
    assert len(store().revisions.of_yard(version(tab).yard_id)) == 1


def test_answers_are_read_only_once_they_differ(searches, tab, monkeypatch):
    """Without a change the text is the one that the page has read already."""
    form, read = import_module("ui.components.wishes_form"), []
    reader = form.scenario_of
    monkeypatch.setattr(form, "scenario_of", lambda *given: read.append(given) or reader(*given))
    opened(tab)
    assert not read
    tab.number_input(key=f"ceiling_{version(tab).id}").set_value(140_000).run()
    assert len(read) == 1


def test_the_file_can_be_changed_by_hand(searches, tab):
    """A wrong text is told line by line; a right one becomes a version."""
    opened(tab)
    first = version(tab)
    tab.text_area(key=f"file_{first.id}").set_value(first.text.replace("party: 24", "party: many")).run()
    pressed(tab, "save_text")
    assert "&#x27;many&#x27;" in words(tab)
    assert version(tab) == first
    tab.text_area(key=f"file_{first.id}").set_value(first.text.replace("party: 24", "party: 30")).run()
    pressed(tab, "save_text")
    assert version(tab).what == "The file was changed"


def test_two_tabs_lose_nothing_and_the_later_one_is_told(searches, tab, project):
    """Both change the same version: two versions stand beside each other, and both can be gone to."""
    opened(tab)
    first = version(tab)
    other = same_address(tab, project)
    tab.number_input(key=f"ceiling_{first.id}").set_value(110_000).run()
    pressed(tab, "save")
    assert not tab.warning
    other.number_input(key=f"ceiling_{first.id}").set_value(150_000).run()
    pressed(other, "save")
    assert "went on from the same version: All-in limit 110,000" in other.warning[0].value.replace("\\", "")
    assert "Work went on in 2 ways" in words(other)
    pressed(other, f"version_{version(tab).id}")
    assert "All-in limit $110,000" in words(other)


def test_a_finalist_keeps_its_name_and_note(searches, tab, project):
    """Kept with a name and a note it is listed with them, in another tab too; dropped it is gone."""
    search_ended(tab.run())
    next(box for box in tab.text_input if box.key.startswith("name_")).set_value("The long court")
    next(box for box in tab.text_area if box.key.startswith("note_")).set_value("Ask about the oak")
    pressed(tab, "save_")
    other = same_address(tab, project)
    other.segmented_control(key="list").set_value("Finalists").run()
    assert "The long court" in words(other)
    assert "Ask about the oak" in words(other)
    pressed(other, "open_finalist_0")
    assert other.header[0].value == "Concept 1"
    pressed(other, "drop_")
    assert "The long court" not in words(other)


def test_steps_without_concepts_lead_to_where_they_are_found(searches, tab):
    opened(tab)
    for step in ("budgets", "hold", "handover"):
        at(tab, step)
        assert "no concepts of this yard yet" in words(tab)
    pressed(tab, "to_search")
    assert named(tab, "step") == "yard"


def test_a_result_can_be_opened(searches, tab, ready):
    """The result of a run elsewhere is shown as if it had been searched here."""
    tab.run()
    tab.radio(key="scenario_name").set_value("A result of an earlier search").run()
    content = (ready / "options.json").read_bytes()
    tab.get("file_uploader")[0].set_value(("options.json", content, "application/json")).run()
    assert "Fernhollow Court: 4 concepts." in words(tab)
    pressed(tab, "open_result")
    assert tab.header[0].value == "Concept 1"


def test_a_yard_with_prices_of_its_own_is_opened_with_both_files(searches, tab):
    """The price file is asked for by name; with it the yard is read, kept and searched."""
    from tests.ui.test_yards import FIRM, NAMED

    tab.run()
    tab.radio(key="scenario_name").set_value("A file of mine").run()
    tab.get("file_uploader")[0].set_value(("small.yaml", NAMED.encode(), "text/yaml")).run()
    assert "prices of its own, in firm.yaml. Add that file as well." in words(tab)
    tab.get("file_uploader")[1].set_value(("firm.yaml", FIRM.encode(), "text/yaml")).run()
    assert "Our prices" in words(tab)
    pressed(tab, "open_yard")
    assert "Our prices" in words(tab)
    assert json.loads(version(tab).prices)["name"] == "Our prices"


def test_a_result_that_is_none_is_told(searches, tab):
    tab.run()
    tab.radio(key="scenario_name").set_value("A result of an earlier search").run()
    tab.get("file_uploader")[0].set_value(("options.json", b"{}", "application/json")).run()
    assert "expected format outdoor-rooms/options/1" in words(tab).lower()


def test_a_database_that_cannot_be_opened_is_told(searches, tab, monkeypatch):
    """One sentence, no traceback."""
    import os

    from ui.state import WORK

    with monkeypatch.context() as wrong:
        wrong.setitem(os.environ, WORK, "nosuchdatabase://host/x")
        tab.run()
    assert not tab.exception
    assert "with --work" in tab.error[0].value


def test_a_budget_becomes_the_limit_and_is_searched(searches, tab):
    """What a budget buys is chosen: its limit and materials make a further version, searched from what is there."""
    search_ended(tab.run())
    search_ended(at(tab, "budgets"), button="find_budgets")
    tab.segmented_control(key="budget_step").set_value("budget-01").run()
    search_ended(tab, button="take_budget")
    assert "All-in limit $64,000" in words(tab)
    assert version(tab).what == "All-in limit 64,000; concepts in plain materials"
    assert 'level: "plain"' in version(tab).text
    assert tab.header[0].value == "Concept 1"


def test_what_another_tab_wrote_is_shown_as_written(searches, tab, project):
    """The name of a room in a file may hold marks: in the message about another tab it makes no picture."""
    opened(tab)
    first = version(tab)
    other = same_address(tab, project)
    store().revisions.save(first, first.text, "![x](http://192.0.2.1/x): like")
    other.number_input(key=f"ceiling_{first.id}").set_value(150_000).run()
    pressed(other, "save")
    assert "![x]" not in other.warning[0].value
