"""Questions on the page: from a room to its answer, and to what would help."""

import json
from time import monotonic, sleep

from tests.ui.on_the_page import at, holding, named, pressed, search_ended, version, words
from tests.ui.sample_concepts import WHY
from ui.searches import question_of
from ui.state import searching


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
    holding(tab, "ask")
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
    holding(tab, "hold")
    pressed(tab, "hold")
    holding(tab, "ask")
    assert "ask again to do any of this" in words(tab)
    assert not [button for button in tab.button if button.key == "do_0"]
