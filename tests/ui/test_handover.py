"""What is handed over: plans, tables, the yard's file, decisions with their reasons, and all of it in one."""

import io
import zipfile
from types import SimpleNamespace

from optimizer.results.decisions import decisions_csv
from optimizer.results.estimate_table import estimate_table
from tests.sample_run import sample_scenario
from tests.ui.on_the_page import at, pressed, same_address, search_ended, version, words
from ui.decided import decided_between, decided_on
from ui.shown import concepts_of
from ui.state import searching, store
from ui.store import Decision


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
