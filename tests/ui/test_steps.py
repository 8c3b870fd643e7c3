"""The steps beside choosing, as a person goes through them: wishes, finalists, holds, hand over, and two tabs."""

import io
import json
import zipfile
from dataclasses import replace
from importlib import import_module
from time import monotonic, sleep
from types import SimpleNamespace

from optimizer.appraisal import outlooks
from optimizer.concepts import OptionSet
from optimizer.concepts.case import Case
from optimizer.derived import Derived
from optimizer.results.decisions import decisions_csv
from optimizer.results.estimate_table import estimate_table
from tests.sample_run import SEARCH, sample_scenario
from tests.ui.sample_concepts import WHY, sample_concepts, write_ready
from tests.ui.test_page import named, same_address, search_ended, words
from ui.decided import decided_between, decided_on
from ui.searches import question_of
from ui.shown import concepts_of
from ui.state import searching, store
from ui.store import Decision


def at(tab, step):
    """The page at a step."""
    tab.segmented_control(key="step").set_value(step).run()
    assert not tab.exception
    return tab


def opened(tab):
    """The yard opened, before any search."""
    tab.run().button(key="open_yard").click().run()
    assert not tab.exception
    return tab


def pressed(tab, start):
    """The page after the press of the button of that key, else of the first whose key begins so."""
    found = [button for button in tab.button if button.key == start] or [
        button for button in tab.button if button.key.startswith(start)
    ]
    found[0].click().run()
    assert not tab.exception
    return tab


def version(tab):
    """The version that the page is at."""
    return store().revisions.get(int(named(tab, "version")))


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


def test_a_held_room_is_in_the_file_and_in_the_next_search(searches, tab):
    """A room held where it stands: the next version's holds have it, and it can be let go."""
    search_ended(tab.run())
    pressed(tab, "to_hold")
    tab.selectbox(key="held_room").select("quiet nook").run()
    search_ended(tab, button="hold_search")
    now = version(tab)
    assert '{"room": "quiet nook", "at": [16, 86]}' in now.text
    assert searching().newest(now).record.start_from
    at(tab, "hold")
    assert "Quiet nook with its lower left corner at 16, 86" in words(tab)
    pressed(tab, "let_go_0")
    assert "Nothing yet" in words(tab)
    assert version(tab).what == "No longer held: quiet nook with its lower left corner at 16, 86"


def test_a_concept_is_drawn_once_for_all_its_pictures(searches, tab, monkeypatch):
    """Small, large, with numbers, and with a scale and an area where a room is held."""
    from ui.components import pictures

    drawn, draw = [], pictures.draw_concept

    def counting(scenario, option, **asked):
        drawn.append((option.id, asked["audience"]))
        return draw(scenario, option, **asked)

    monkeypatch.setattr(pictures, "draw_concept", counting)
    search_ended(tab.run())
    at(tab, "hold")
    assert sorted(drawn) == [(f"c{number}", "owner") for number in (1, 2, 3, 4)]


def test_a_spot_is_forbidden_and_an_area_is_drawn(searches, tab):
    search_ended(tab.run())
    at(tab, "hold")
    tab.radio(key="held_how").set_value("within").run()
    assert [slider.label for slider in tab.slider] == ["Across (ft)", "Up (ft)"]
    tab.radio(key="held_how").set_value("not_here").run()
    pressed(tab, "hold")
    assert "not_in" in version(tab).text


def test_a_hold_that_cannot_be_is_told(searches, tab):
    """Out of an area and within the same one: the reader says so, and nothing is saved."""
    search_ended(tab.run())
    at(tab, "hold")
    tab.radio(key="held_how").set_value("not_in").run()
    pressed(tab, "hold")
    saved = version(tab)
    tab.radio(key="held_how").set_value("within").run()
    assert "So it cannot be held" in words(tab)
    assert "lies in one of" in words(tab)
    assert version(tab) == saved


def asked(tab, seconds=15.0):
    """The page once its question is answered."""
    pressed(tab, "ask")
    end = monotonic() + seconds
    while "Asking" in words(tab) and monotonic() < end:
        sleep(0.1)
        tab.run()
    assert not tab.exception
    return tab


def test_a_room_that_is_left_out_leads_to_its_question_and_a_way_out_is_taken(searches, tab):
    """From the concept to the question, its answer in an owner's words, and the change that helps; it says what it did."""
    search_ended(tab.run())
    first = version(tab)
    pressed(tab, "ask_why_0")
    assert tab.selectbox(key="why_room").value == "water reserve"
    assert [*tab.radio(key="why_kind_water reserve").options] == ["Why is it left out?", "Why not here?"]
    asked(tab)
    assert "the all-in limit is $130,000" in words(tab)
    assert "Stays near. For fire feature and gathering area." in words(tab)
    search_ended(tab, button="do_0")
    assert version(tab).parent_id == first.id
    assert "ceiling: 140000 " in version(tab).text
    assert "In this version of the yard: Raise the all-in limit to $140,000." in words(tab)


def test_a_question_is_the_same_command_that_a_person_types(searches, tab):
    """About a place: two numbers in the file's unit, in the concept that is open."""
    search_ended(tab.run())
    pressed(tab, "open_2")
    at(tab, "hold")
    tab.segmented_control(key="hold_or_ask").set_value("ask").run()
    tab.selectbox(key="why_room").select("quiet nook").run()
    tab.radio(key="why_kind_quiet nook").set_value("here").run()
    tab.number_input(key="Across_quiet nook").set_value(12.5).run()
    asked(tab)
    job = searching().table.get(named(tab, "why"))
    assert job.asked.further == ("--room=quiet nook", "--option=c2", "--at=12.5,74")
    assert job.asked.start_from is not None


def test_what_is_not_decided_is_said_and_asked_for_longer(searches, tab, ready, tmp_path):
    """The same question, for three times as long."""
    (tmp_path / "why.json").write_text(json.dumps({**WHY, "answered": False, "ways_out": []}))
    (tmp_path / "options.json").write_bytes((ready / "options.json").read_bytes())
    searches("at_once", tmp_path)
    search_ended(tab.run())
    pressed(tab, "ask_why_0")
    asked(tab)
    assert "Not decided in this time; ask again for longer" in words(tab)
    first = searching().get(named(tab, "why"))
    pressed(tab, "ask_longer")
    second = searching().get(named(tab, "why"))
    assert second.seconds == 3 * first.seconds
    assert question_of(second) == question_of(first)


def test_a_way_out_of_another_version_waits_for_a_new_question(searches, tab):
    """A change that was tried on one version says nothing of the next."""
    search_ended(tab.run())
    pressed(tab, "ask_why_0")
    asked(tab)
    tab.segmented_control(key="hold_or_ask").set_value("hold").run()
    pressed(tab, "hold")
    tab.segmented_control(key="hold_or_ask").set_value("ask").run()
    assert "ask again to do any of this" in words(tab)
    assert not [button for button in tab.button if button.key == "do_0"]


def test_all_there_is_can_be_handed_over(searches, tab):
    """Plans for owner and designer of the first three, results, tables, the yard's file; all of it in one."""
    search_ended(tab.run())
    at(tab, "handover")
    labels = [button.label for button in tab.get("download_button")]
    assert labels.count("Owner's plan as SVG") == labels.count("Designer's plan as SVG") == 3
    assert labels.count("Estimate (CSV)") == 3
    assert "All concepts (JSON)" in labels
    assert "With and without each room (CSV)" in labels
    assert "The yard's file" in labels


def test_the_parcel_has_every_file(searches, tab):
    """All that the search has kept but its plans; the stand-in hands over budgets and an answer too, whatever is asked."""
    from ui.components.handover import _tables, _zip

    search_ended(tab.run())
    search = searching().newest(version(tab))
    shown = concepts_of(search)[3]
    parcel = zipfile.ZipFile(io.BytesIO(_zip(_tables(search, search), [("One", shown)])))
    assert set(parcel.namelist()) == {
        "options.json",
        "with-without.csv",
        "budgets.json",
        "budgets.csv",
        "budgets.svg",
        "why.json",
        "plans/1-concept-4-owner.svg",
        "plans/1-concept-4-designer.svg",
        "1-concept-4/estimate.csv",
        "1-concept-4/phase-1.svg",
        "1-concept-4/phase-2.svg",
        "yard.yaml",
        "decisions.csv",
    }
    assert parcel.read("1-concept-4/estimate.csv").decode() == estimate_table(shown.scenario, shown.option)
    assert parcel.read("with-without.csv").startswith(b"room,size,")
    plans = [parcel.read(f"1-concept-4/phase-{phase}.svg").decode() for phase in (1, 2)]
    assert ["after phase 1" in plans[0], "after phase 2" in plans[1]] == [True, True]
    assert parcel.testzip() is None


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


def test_decisions_are_listed_with_their_reasons(searches, tab, project):
    """A limit, a hold and a finalist, each with why: a dated list in another tab too, and a table of it in the parcel."""
    from ui.components.handover import _zip

    search_ended(tab.run())
    first = version(tab)
    at(tab, "yard")
    tab.number_input(key=f"ceiling_{first.id}").set_value(140_000).run()
    tab.text_input(key=f"reason_wishes_{first.id}").set_value("The kitchen is worth it").run()
    pressed(tab, "save")
    second = version(tab)
    at(tab, "hold")
    tab.text_input(key=f"reason_hold_{second.id}").set_value("Shade of the oak").run()
    pressed(tab, "hold")
    at(tab, "choose")
    next(box for box in tab.text_input if box.key.startswith("reason_")).set_value("Shortest ways")
    pressed(tab, "save_")
    other = at(same_address(tab, project), "handover")
    said = words(other)
    for what, why in (("All-in limit 140,000", "The kitchen is worth it"), ("Held: ", "Shade of the oak")):
        assert what in said
        assert why in said
    rows = decided_on(first.yard_id)
    assert [row.version for row in rows] == [2, 3, 1]
    assert rows[-1].what.startswith("Finalist: ")
    assert rows[-1].reason == "Shortest ways"
    shown = concepts_of(searching().newest(first))[0]
    parcel = zipfile.ZipFile(io.BytesIO(_zip({}, [("One", shown)], rows)))
    assert parcel.read("decisions.csv").decode() == decisions_csv(rows)


def test_a_parcel_says_what_became_of_the_concept_before(searches, tab):
    """Where a search went on from another one: a note, with what was decided in between."""
    from ui.components.handover import _zip

    search_ended(tab.run())
    first = version(tab)
    at(tab, "yard")
    tab.number_input(key=f"ceiling_{first.id}").set_value(140_000).run()
    search_ended(tab)
    shown = concepts_of(searching().newest(version(tab)))[1]
    parcel = zipfile.ZipFile(io.BytesIO(_zip({}, [("One", shown)], decided_on(first.yard_id))))
    note = parcel.read("revision-note.txt").decode()
    assert "Concept 2 against Concept 1 before it" in note
    assert "quiet nook moved" in note
    assert "All-in limit 140,000" in note


def test_what_was_decided_in_between_lies_on_the_way(searches):
    """After the version of the first concept, up to that of the second; not in what stands beside."""
    revisions, kept = store().revisions, store().decisions
    first = revisions.open("yard", sample_scenario().text)
    second = revisions.save(first, "b", "second").revision
    beside = revisions.save(first, "c", "beside").revision
    third = revisions.save(second, "d", "third").revision
    for each in (first, second, beside, third):
        kept.add(Decision(each.yard_id, each.id, each.what))
    a, c = (SimpleNamespace(search=SimpleNamespace(record=SimpleNamespace(revision_id=e.id))) for e in (first, third))
    assert [row.what for row in decided_between(a, c)] == ["second", "third"]
    assert decided_between(c, a) == decided_between(a, c)
    assert decided_between(c, c) == ()


def test_the_phases_are_a_strip_and_a_press_enlarges(searches, tab):
    """A concept of two phases has two small plans with their money and machines; one of a single phase has none."""
    search_ended(tab.run())
    at(tab, "hold")
    assert "Phase by phase" not in " ".join(heading.value for heading in tab.subheader)
    at(tab, "choose")
    pressed(tab, "open_4")
    at(tab, "hold")
    assert "Phase by phase in Concept 4" in [heading.value for heading in tab.subheader]
    said = words(tab)
    assert "Phase 2: about $16,000" in said
    assert said.count("Machines come in by the drive") == 2
    assert "have lines in the ground marked" in said
    before = said.count("<img")
    pressed(tab, "enlarge_phase_2")
    assert words(tab).count("<img") == before + 1


def test_what_may_come_later_is_shown_one_at_a_time(searches, tab, tmp_path, project):
    """Each future with its picture; what is chosen is in the address."""
    concept = sample_concepts().options[3]
    there = Derived(sample_scenario(), Case.of(sample_scenario()).placed(concept.layout))
    later = replace(concept, futures=outlooks(there, sample_scenario().book))
    write_ready(tmp_path, OptionSet((later,), SEARCH))
    searches("at_once", tmp_path)
    search_ended(tab.run())
    at(tab, "hold")
    assert [*tab.segmented_control(key="future").options] == ["Hot tub", "Swim spa", "Plunge pool"]
    assert "A later hot tub on the water reserve" in words(tab)
    tab.segmented_control(key="future").set_value("plunge pool").run()
    assert named(tab, "future") == "plunge pool"
    other = same_address(tab, project)
    assert "A later plunge pool on the water reserve" in words(other)
    assert "Dashed: water and deck" in words(other)
