"""Walls and paving that are in the yard already, as the file gives them."""

import pytest

from optimizer.scenario import read_scenario, scenario_notes
from optimizer.scenario.json_schema import scenario_schema
from optimizer.site import Paving, Wall, WallOpening
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


SLAB = "{name: old patio, outline: [[30, 20], [30, 30], [44, 30], [44, 20]], surface: concrete, then: reuse, z: 0.5}"


def with_paving(*pieces: str) -> str:
    return changed("  trees:", "  paving:\n" + "".join(f"    - {piece}\n" for piece in pieces) + "  trees:")


def test_paving_of_the_example():
    """Outlines are turned counter-clockwise, and lengths are in the file's unit."""
    walk = "{name: walk, outline: [[0, 28], [9, 28], [9, 32], [0, 32]], surface: asphalt, then: keep}"
    slab, kept = read_scenario(with_paving(SLAB, walk), "x").site.paving
    assert slab == Paving("old patio", ((30, 20), (44, 20), (44, 30), (30, 30)), "concrete", "reuse", 0.5)
    assert kept == Paving("walk", ((0, 28), (9, 28), (9, 32), (0, 32)), "asphalt", "keep", None)
    in_metres = read_scenario(with_paving(SLAB).replace("units: ft", "units: m"), "x").site.paving[0]
    assert in_metres.z_ft == pytest.approx(0.5 / 0.3048)


@pytest.mark.parametrize(("old", "new", "said"), [
    ("then: reuse", "then: reuze", "expected keep, lift or reuse, found 'reuze'; did you mean reuse?"),
    (", then: reuse", "", "then"),
    ("surface: concrete", "surface: lava", "found 'lava'"),
    ("surface: concrete", "surface: gravel", "expected a slab of concrete where a room is to lie on it, found gravel"),
    ("[30, 20], [30, 30], [44, 30], [44, 20]", "[30, 20], [44, 30], [44, 20], [30, 30]", "found edges that cross or touch"),
    ("[44, 30], [44, 20]", "[64, 30], [64, 20]", "expected paving inside the boundary, found old patio 4.00 ft outside"),
    ("name: old patio", "name: house", "found 'house' a second time"),
    ("z: 0.5", "z: high", "expected a length"),
])  # fmt: skip
def test_bad_paving_is_refused(old, new, said):
    """One report each, with its line, and what was expected."""
    (problem,) = problems(with_paving(changed(old, new, SLAB)))
    assert problem.startswith(("yard.yaml:13:", "yard.yaml:14:"))
    assert said in problem


def test_paving_lies_beside_other_paving():
    """Two pieces may touch; one on the other is a slip."""
    beside = "{name: walk, outline: [[44, 20], [50, 20], [50, 24], [44, 24]], surface: brick, then: lift}"
    assert len(read_scenario(with_paving(SLAB, beside), "x").site.paving) == 2
    (problem,) = problems(
        with_paving(SLAB, beside.replace("[44, 20], [50", "[40, 20], [50").replace("[44, 24]", "[40, 24]"))
    )
    assert "expected pieces of paving side by side, found walk, of which 16.0 sq ft lie on old patio" in problem


def test_the_schema_knows_both():
    """Editors are told what each key means."""
    shown = scenario_schema()["$defs"]
    assert "carries a paved room" in shown["PavingPart"]["properties"]["then"]["description"]
    assert shown["WallPart"]["properties"]["kind"]["description"] == "What it is."
