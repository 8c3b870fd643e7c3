"""Walls that stand in the yard, as the file gives them."""

import pytest

from optimizer.scenario import read_scenario, scenario_notes
from optimizer.site import Wall, WallOpening
from tests.small_yard import changed, problems

WALL = "{name: fence, line: [[20, 20], [20, 45]], kind: fence, height: 6, openings: [{at: [20, 40], width: 4}]}"


def with_walls(*walls: str) -> str:
    return changed("  trees:", "  walls:\n" + "".join(f"    - {wall}\n" for wall in walls) + "  trees:")


def test_walls_of_the_example():
    """Kinds, heights, a locked gate, and lengths in the file's unit."""
    text = with_walls(
        WALL.replace("width: 4", "width: 4, gate: locked"), "{name: h, line: [[0, 40], [9, 40]], kind: hedge}"
    )
    walls = read_scenario(text, "x").site.walls
    opening = WallOpening((20, 40), 4, "locked")
    assert walls == (
        Wall("fence", ((20, 20), (20, 45)), "fence", 6, (opening,)),
        Wall("h", ((0, 40), (9, 40)), "hedge", None, ()),
    )
    in_metres = read_scenario(text.replace("units: ft", "units: m"), "x").site.walls[0]
    assert in_metres.openings[0].width_ft == pytest.approx(4 / 0.3048)


@pytest.mark.parametrize(("old", "new", "said"), [
    ("kind: fence", "kind: fense", "expected"),
    ("kind: fence, ", "", "kind"),
    ("height: 6", "height: -6", "expected a length above 0"),
    ("at: [20, 40]", "at: [22, 40]", "expected an opening on the line of fence, found one at [22, 40], 2.00 ft away from it; move it there"),
    ("at: [20, 40]", "at: [20, 44]", "expected an opening within fence, found one 4 ft wide that reaches 1.00 ft past it"),
    ("[{at: [20, 40], width: 4}]", "[{at: [20, 40], width: 4}, {at: [20, 37], width: 4}]", "found one at [20, 40] that laps over another by 1.00 ft"),
    ("width: 4", "width: 4, gate: ajar", "expected locked or unlocked, found 'ajar'"),
    ("[20, 45]]", "[20, 53]]", "expected a fence inside the boundary, found fence 3.00 ft outside"),
    ("[[20, 20], [20, 45]]", "[[20, 20]]", "2"),
    ("[[20, 20], [20, 45]]", "[[20, 20], [20, 20], [20, 45]]", "found the point [20, 20] twice in a row"),
    ("[[20, 20], [20, 45]]", "[[20, 20], [20, 45], [25, 45], [15, 30]]", "found a line that crosses or touches itself"),
    ("name: fence", "name: elm", "expected a name of its own for everything, found 'elm' a second time"),
    ("height: 6", "height: 6, colour: red", "colour"),
])  # fmt: skip
def test_bad_walls_are_refused(old, new, said):
    """One report each, with its line, and what was expected."""
    (problem,) = problems(with_walls(changed(old, new, WALL)))
    assert problem.startswith(("yard.yaml:13:", "yard.yaml:14:"))
    assert said in problem


def test_a_wall_is_in_relations_by_name():
    """Near a fence is a relation; touching one is none, as it has no edge."""
    text = with_walls(WALL)
    assert read_scenario(text.replace("[table, chairs]", "[table, fence]"), "x")
    (problem,) = problems(
        text.replace("{between: [table, chairs], kind: near, within: 20}", "{between: [table, fence], kind: touching}")
    )
    assert "two names with edges that can touch" in problem


def test_a_limit_of_walls():
    """101 are one too many."""
    (problem,) = problems(
        with_walls(*(f"{{name: w{n}, line: [[{n / 2}, 40], [{n / 2}, 41]], kind: wall}}" for n in range(101)))
    )
    assert "expected a list of at most 100, found a list of 101" in problem


def test_an_entrance_on_a_wall_without_an_opening_is_a_note():
    """People come in all the same; with an opening there is nothing to say."""
    wall = "{name: side fence, line: [[0, 20], [0, 45]], kind: fence, height: 6}"
    (note,) = [n for n in scenario_notes(read_scenario(with_walls(wall), "x")) if n.startswith("side fence")]
    assert "gate lies on it and it has no opening there" in note
    opened = changed("height: 6", "height: 6, openings: [{at: [0, 30], width: 4, gate: unlocked}]", wall)
    assert not [n for n in scenario_notes(read_scenario(with_walls(opened), "x")) if n.startswith("side fence")]
