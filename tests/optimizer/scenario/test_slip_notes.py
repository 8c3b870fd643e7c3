"""Notes about what may be a slip of the pen: names and sizes that a file may hold and hardly means."""

import pytest

from optimizer.scenario import read_scenario, scenario_notes
from tests.small_yard import changed

SLIPS = [
    ("kind: nook, seats: 2", "kind: kitchen, equipment: [gril 36 in, sink]", "chairs: the catalogue knows no 'gril' and counts it as another appliance; did you mean grill or griddle?"),
    ("kind: nook, seats: 2, worth: 3", "kind: kitchen, choices: [{label: a, equipment: [kettle], worth: 3}]", "counts it as another appliance"),
    ("kind: nook, seats: 2", "kind: kitchen, equipment: [kettle]", "counts it as another appliance; it knows grill, side burner"),
    ("trunk_diameter: 1, canopy_radius: 8", "trunk_diameter: 16, canopy_radius: 14", "elm: 16'-0\" is more than a trunk of a garden has; check the digits and the unit"),
    ("canopy_radius: 8", "canopy_radius: 800", "elm: 800'-0\" is more than a crown radius of a garden has"),
    ("name: gate, at: [0, 30], width: 4", "name: gate, at: [0, 30], width: 0.1", "gate: 0'-1 1/4\" is too narrow to walk through; check the unit"),
    ("name: house,", "name: house, height: 2100,", "house: 2100'-0\" is more than a building of a garden has"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), SLIPS, ids=[new[:40] for _, new, _ in SLIPS])
def test_a_likely_slip_is_one_note(old, new, said):
    """What is read and may not be meant is told, with what may be meant."""
    (note,) = (
        note
        for note in scenario_notes(read_scenario(changed(old, new), "x"))
        if "check the" in note or "counts it" in note
    )
    assert said in note


def test_what_is_known_needs_no_note():
    """Known equipment, in any case of letters, and usual sizes say nothing."""
    text = changed("kind: nook, seats: 2", "kind: kitchen, equipment: [Grill 36 in, sink]")
    assert not [note for note in scenario_notes(read_scenario(text, "x")) if "counts it" in note or "check the" in note]
