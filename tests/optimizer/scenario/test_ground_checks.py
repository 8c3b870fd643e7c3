"""Lines in the ground, root rings and wind: what is refused, what is noted, and what is read in the file's unit."""

import pytest

from optimizer.scenario import read_scenario, scenario_notes
from tests.small_yard import SMALL, changed, problems

METRIC = changed("units: ft", "units: m").replace("trunk_diameter: 1", "trunk_diameter: 0.3")


def with_site(lines, text=SMALL):
    """The small yard with more keys in its site."""
    return changed("  trees:", f"  {lines}\n  trees:", text)


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ("utilities: [{kind: gas, line: [[70, 0], [70, 50]]}]", "13:33: expected a line that crosses the yard, found gas line from [70, 0] on, all of it outside the boundary; check its points"),
        ("utilities: [{kind: gas, name: main, line: [[-9, -9], [-9, 50], [-9, 60]]}]", "found main from [-9, -9] on"),
        ("utilities: [{kind: gas}]", "13:15: expected one of `at` (where a run starts) and `line` (a known line), found neither"),
        ("utilities: [{kind: gas, at: [1, 1], clear: 2}]", "expected `clear` with a `line` only, found it without one"),
        ("root_rings: {outer: 5}", "13:23: expected an outer ring of at least the inner one's 6 trunk diameters, found 5; "),
        ("root_rings: {inner: 9, outer: 8.5}", "expected an outer ring of at least the inner one's 9 trunk diameters, found 8.5"),
        ("root_rings: {paved_share: 1.2}", "13:29: expected a number of at most 1, found 1.2; "),
        ("wind_rose: [0.5, 0.5, 0.01, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]", "13:14: expected shares of 1 in all at most, found 1.01; divide each by their sum"),
        ("wind_rose: [0.5, 0.5]", "13:14: expected a list of at least 16, found a list of 2; "),
        ("distances: {gas_fire: -1}", "expected a length of at least 0, found -1; "),
        ("distances: {gas_fre: 8}", "found 'gas_fre'; did you mean gas_fire?"),
    ],
)  # fmt: skip
def test_a_fault_is_one_problem_in_its_place(lines, said):
    """Each fault gives one problem that says what was expected and found, where."""
    (problem,) = problems(with_site(lines))
    assert problem.startswith("yard.yaml:13:")
    assert said in problem


@pytest.mark.parametrize(
    "lines",
    [
        "utilities: [{kind: gas, line: [[70, 10], [-10, 40]]}]",
        "root_rings: {outer: 6}",
        "root_rings: {inner: 20}",
        "wind_rose: [0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625, 0.0625]",
        "wind_rose: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0, 0, 0, 0, 0, 0]",
    ],
)
def test_what_is_just_right_is_read(lines):
    """A line that only crosses the yard, rings of one size, and a season without calm."""
    read_scenario(with_site(lines), "yard.yaml")


def test_a_line_outside_a_boundary_that_is_none_is_not_a_second_problem():
    """Where the boundary crosses itself, nothing is said of what lies outside it."""
    crossed = changed("[60, 50], [0, 50]]}", "[0, 50], [60, 50]]}")
    assert len(problems(with_site("utilities: [{kind: gas, line: [[70, 0], [70, 50]]}]", crossed))) == 1


def test_distances_in_the_files_own_unit():
    """3 in a metric file is 3 m; a unit that is written wins."""
    assert dict(read_scenario(with_site("distances: {gas_fire: 8, wood_fire: 5 m}"), "x").site.distances) == {
        "gas_fire": 8,
        "wood_fire": pytest.approx(16.4042, abs=1e-4),
    }
    (given,) = read_scenario(with_site("distances: {gas_fire: 3}", METRIC), "x").site.distances
    assert given == ("gas_fire", pytest.approx(9.84252, abs=1e-5))


@pytest.mark.parametrize(("at", "count"), [("[30, -5]", 0), ("[30, -5.1]", 1), ("[30, 20]", 0)])
def test_a_run_from_the_middle_of_the_street_is_noted(at, count):
    """More than 5 ft outside the boundary a run's start is told, with how far it lies."""
    notes = scenario_notes(read_scenario(with_site(f"utilities: [{{kind: gas, at: {at}}}]"), "x"))
    assert len(notes) == count
    assert all(note.startswith("gas starts 5 ft outside the boundary; runs are measured from there") for note in notes)


def test_the_note_speaks_the_files_unit():
    """12 m away in a metric file."""
    (note,) = scenario_notes(read_scenario(with_site("utilities: [{kind: water, at: [30, -12]}]", METRIC), "x"))
    assert note.startswith("water starts 12 m outside the boundary")


def test_a_way_over_a_septic_field_is_noted():
    """What a field allows as a way is kept unpaved."""
    field = "name: strip, kind: septic field, outline"
    (note,) = scenario_notes(read_scenario(changed("name: strip, outline", field), "x"))
    assert note.startswith("strip: a way over a septic field is kept unpaved")
