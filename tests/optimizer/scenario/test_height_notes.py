"""Notes about heights that a scenario leaves out."""

from optimizer.scenario import read_scenario, scenario_notes
from tests.small_yard import changed

BEYOND = """  surroundings:
    - {name: next door, outline: [[70, 0], [90, 0], [90, 20], [70, 20]]}
    - {name: rear fence, line: [[0, 40], [60, 40]]}
    - {name: window, at: [70, 5]}
brief:
"""
SUNNY = changed("seats: 2, worth: 3}", 'seats: 2, worth: 3, sun: {want: sun, from: "08:00", to: "10:00", months: [6]}}')


def height_notes(text: str) -> list[str]:
    """Notes about heights."""
    return [note for note in scenario_notes(read_scenario(text, "x")) if "no height given" in note]


def test_what_has_no_height_is_a_note_where_sun_is_wished_for():
    """A house of 20 ft, a tree of 25, a fence of 6; an eye needs no height."""
    assert height_notes(changed("brief:\n", BEYOND, SUNNY)) == [
        "house: no height given; for its shadow 20'-0\" is taken",
        "elm: no height given; for its shadow 25'-0\" is taken",
        "next door: no height given; for its shadow 20'-0\" is taken",
        "rear fence: no height given; for its shadow 6'-0\" is taken",
    ]


def test_a_given_height_needs_no_note():
    """Only the tree is left."""
    (note,) = height_notes(changed("[10, 20]], doors", "[10, 20]], height: 20, doors", SUNNY))
    assert note.startswith("elm:")


def test_notes_speak_in_the_unit_of_the_file():
    """20 ft are 6.10 m."""
    text = changed("units: ft", "units: m", SUNNY)
    assert "house: no height given; for its shadow 6.10 m is taken" in height_notes(text)
