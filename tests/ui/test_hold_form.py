"""Hold here: rooms that are held, ground that is held for later, and the phases of a concept."""

from dataclasses import replace

from optimizer.appraisal import outlooks
from optimizer.concepts import OptionSet
from optimizer.concepts.case import Case
from optimizer.derived import Derived
from tests.sample_run import SEARCH, sample_scenario
from tests.ui.on_the_page import at, holding, named, pressed, same_address, search_ended, version, words
from tests.ui.sample_concepts import sample_concepts, write_ready
from ui.state import searching


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


def test_the_phases_are_a_strip_and_a_press_enlarges(searches, tab):
    """A concept of two phases has two small plans with their money and machines; one of a single phase has none."""
    search_ended(tab.run())
    at(tab, "hold")
    assert "Phase by phase" not in tab.segmented_control(key="holding").options
    at(tab, "choose")
    pressed(tab, "open_4")
    at(tab, "hold")
    holding(tab, "phases")
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
    holding(at(tab, "hold"), "later")
    assert [*tab.segmented_control(key="future").options] == ["Hot tub", "Swim spa", "Plunge pool"]
    assert "A later hot tub on the water reserve" in words(tab)
    tab.segmented_control(key="future").set_value("plunge pool").run()
    assert named(tab, "future") == "plunge pool"
    other = same_address(tab, project)
    assert "A later plunge pool on the water reserve" in words(other)
    assert "Dashed: water and deck" in words(other)
