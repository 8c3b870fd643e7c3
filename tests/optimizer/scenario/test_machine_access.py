"""The smallest machine that the builder would bring, as the file gives it."""

import pytest

from optimizer.scenario import read_scenario, scenario_notes
from optimizer.scenario.json_schema import scenario_schema
from optimizer.site import Machine
from tests.small_yard import SMALL, changed, problems

MACHINE = "{width: 7, height: 9, turning_radius: 12, steepest: 0.2}"


def with_machine(machine: str, text: str = SMALL) -> str:
    return changed("  trees:", f"  machine_access: {machine}\n  trees:", text)


def test_the_machine_of_the_example():
    """Lengths in feet, whatever the file's unit; without the key there is no machine."""
    assert read_scenario(with_machine(MACHINE), "x").site.machine == Machine(7, 9, 12, 0.2)
    metric = with_machine("{width: 2.1 m, height: 9 ft, turning_radius: 0, steepest: 1}").replace(
        "units: ft", "units: m"
    )
    machine = read_scenario(metric, "x").site.machine
    assert machine is not None
    assert (machine.width_ft, machine.height_ft) == (pytest.approx(2.1 / 0.3048), 9)
    assert read_scenario(SMALL, "x").site.machine is None


@pytest.mark.parametrize(("old", "new", "said"), [
    ("steepest: 0.2", "steepest: 20", "expected a slope above 0 and at most 1, as rise per run, found 20; write 0.2 for 20 %"),
    ("steepest: 0.2", "steepest: 0", "expected a slope above 0"),
    ("steepest: 0.2", "steepest: true", "expected a slope above 0"),
    ("width: 7", "width: 0", "expected a length above 0"),
    ("turning_radius: 12", "turning_radius: -1", "expected a length of at least 0"),
    (", height: 9", "", "expected the key `height`, found nothing; add it"),
    ("height: 9", "height: 9, weight: 3", "expected one of the keys width, height, turning_radius, steepest"),
])  # fmt: skip
def test_a_bad_machine_is_refused(old, new, said):
    """One report, with its line."""
    (problem,) = problems(with_machine(changed(old, new, MACHINE)))
    assert problem.startswith("yard.yaml:13:")
    assert said in problem


def test_a_machine_too_wide_for_every_entrance_is_a_note():
    """The gate of the small yard is 4 ft wide."""
    (note,) = [n for n in scenario_notes(read_scenario(with_machine(MACHINE), "x")) if n.startswith("machine")]
    assert "no entrance for machines is 7'-0\" wide (gate 4'-0\")" in note
    narrow = read_scenario(with_machine(changed("width: 7", "width: 4", MACHINE)), "x")
    assert not [n for n in scenario_notes(narrow) if n.startswith("machine")]


def test_an_opening_in_a_wall_narrows_the_gate():
    """A gate of 8 ft takes a machine of 7 ft, but not where a fence on it leaves an opening of 5 ft."""
    wide = changed("at: [0, 30], width: 4", "at: [0, 30], width: 8", with_machine(MACHINE))
    assert not [n for n in scenario_notes(read_scenario(wide, "x")) if n.startswith("machine")]
    wall = "{name: fence, line: [[0, 20], [0, 40]], kind: fence, openings: [{at: [0, 30], width: 5}]}"
    fenced = read_scenario(changed("  trees:", f"  walls: [{wall}]\n  trees:", wide), "x")
    (note,) = [n for n in scenario_notes(fenced) if n.startswith("machine")]
    assert "(gate 5'-0\")" in note


def test_the_schema_knows_it():
    """Editors are told what the key means."""
    shown = scenario_schema()["$defs"]["MachinePart"]["properties"]
    assert shown["steepest"] == {
        "description": "Steepest ground that it drives on, as rise per run.",
        "exclusiveMinimum": 0,
        "maximum": 1,
        "title": "Steepest",
        "type": "number",
    }
