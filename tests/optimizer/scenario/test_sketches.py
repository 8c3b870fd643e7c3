"""Sketches in a scenario: what they read as, and every report on one that cannot be measured."""

import pytest

from optimizer.brief import Sketch, SketchedRoom
from optimizer.scenario import read_scenario
from tests.small_yard import SMALL, problems

ROOM = "room: table, at: [22, 24], width: 14, depth: 12, front: '+y'"


def sketched(*rooms, name="first idea"):
    """The small yard with a sketch of these rooms, each as written."""
    lines = "".join(f"      - {{{room}}}\n" for room in rooms)
    return f"{SMALL}sketches:\n  - name: {name}\n    rooms:\n{lines}"


def test_what_is_read():
    """Every key, with lengths in any unit; a choice may be left open."""
    text = sketched(f"{ROOM}, choice: six", "room: chairs, at: [2, 22], width: 3 m, depth: 7, front: -x")
    (sketch,) = read_scenario(text, "yard.yaml").sketches
    table, chairs = sketch.rooms
    assert table == SketchedRoom("table", (22, 24), 14, 12, "+y", "six")
    assert chairs == SketchedRoom("chairs", (2, 22), pytest.approx(9.8425, abs=1e-4), 7, "-x")
    assert read_scenario(SMALL, "yard.yaml").sketches == ()
    assert sketch == Sketch("first idea", (table, chairs))


FAULTS = [
    ((ROOM.replace("table", "tabel"),), "expected the name of a room, found 'tabel'; did you mean table?"),
    ((ROOM, ROOM.replace("22, 24", "2, 24")), "expected each room once, found 'table' a second time; take one"),
    ((f"{ROOM}, choice: sixx",), "expected a choice of table, found 'sixx'; did you mean six?"),
    ((ROOM.replace("width: 14, ", ""),), "expected the key `width`, found nothing; add it"),
    ((ROOM.replace(", front: '+y'", ""),), "expected the key `front`, found nothing; add it"),
    ((ROOM.replace("width: 14", "width: 0"),), "expected a length above 0, found 0; "),
    (
        (ROOM.replace("width: 14", "width: 140"),),
        "expected a size that the yard can hold, found 140 ft in a yard of 78 ft",
    ),
    (
        (ROOM.replace("22, 24", "60, 24"),),
        "expected a room in the yard, found table at [60, 24] ft, wholly outside; check",
    ),
    (
        (ROOM.replace("22, 24", "2200, 24"),),
        "expected a room in the yard, found table at [2200, 24] ft, wholly outside; ",
    ),
]


@pytest.mark.parametrize(("rooms", "expected"), FAULTS)
def test_one_report(rooms, expected):
    """Each fault is one problem in its place, in words that say what to do."""
    (problem,) = problems(sketched(*rooms))
    assert problem.startswith(f"yard.yaml:{25 + len(rooms)}:")
    assert expected in problem


def test_names_differ():
    """Two sketches of one name could not be told apart."""
    text = sketched(ROOM) + "  - name: first idea\n    rooms:\n      - {" + ROOM + "}\n"
    (problem,) = problems(text)
    assert "expected a name of its own for each sketch, found 'first idea'; rename one" in problem
