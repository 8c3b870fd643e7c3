"""The nearest layout to a sketch, against every layout of a tiny yard that the check lets pass."""

import threading
from dataclasses import replace

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.improve import improved as improving
from optimizer.concepts.improve.answer import said, sketch_added
from optimizer.concepts.improve.explored import CENTS_A_FOOT, Explored
from optimizer.concepts.improve.improved import improved
from optimizer.concepts.improve.measure import ABSENT_FT, COVERED_FT, RESIZED_FT, TURNED_FT, distance_ft
from optimizer.engine.problem import Spot, layout_of
from optimizer.engine.prover.nearest import Nearest
from optimizer.engine.prover.solve import Answer
from optimizer.layout import Layout, Placement
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import TEXT, layouts, tiny

DRAWN = f"""{TEXT}sketches:
  - name: mine
    rooms: [{{room: table, choice: two, at: [4, 8], width: 12, depth: 8, front: +y}}]
"""
NEVER = threading.Event()


@pytest.fixture(scope="module")
def case():
    """The tiny yard."""
    return tiny()


def sketch(*places):
    """A layout of the tiny yard: table and nook, each a corner, a size and a choice."""
    names = zip(("table", "nook"), places, strict=False)
    return Layout(
        tuple(Placement(name, choice, *corner, *size, "+y") for name, (choice, corner, size) in names if corner)
    )


SKETCHES = {
    "on the house": sketch(("two", (3.0, 2.5), (12, 8)), ("small", (24, 18), (8, 8))),
    "too near": sketch(("two", (8.3, 12), (12, 8)), ("small", (20.4, 13), (8, 8))),
    "too large": sketch(("two", (8, 12), (12, 8)), ("large", (22, 14), (12, 12))),
    "turned": sketch(("two", (8, 8), (8, 12)), ("small", (26, 19), (8, 8))),
    "without a nook": sketch(("two", (20, 16), (12, 8))),
    "without what must be": Layout((Placement("nook", "small", 20, 6, 8, 8, "+y"),)),
}


@pytest.mark.parametrize("name", SKETCHES)
def test_the_nearest_is_the_nearest_of_all(case, name):
    """By the same measure: the judge refuses every layout of the grid that is nearer; what is proven is reached."""
    drawn = SKETCHES[name]
    assert not case.judged(drawn).holds
    found = improved(case, drawn, seconds=20, stop=NEVER)
    assert found.status == "nearest"
    assert case.judged(found.layout).holds
    assert found.distance_ft == pytest.approx(distance_ft(case.rooms, drawn, found.layout))
    assert found.distance_ft <= found.least_ft + 0.05
    nearer = [layout for layout in layouts(case) if distance_ft(case.rooms, drawn, layout) < found.least_ft - 0.05]
    assert not [layout for layout in nearer if case.judged(layout).holds]
    assert "proven that no other on the grid is nearer" in said(found, case.scenario)


def test_what_keeps_the_rules_stays(case):
    """Nothing is moved."""
    good = improved(case, SKETCHES["turned"], seconds=20, stop=NEVER).layout
    found = improved(case, good, seconds=5, stop=NEVER)
    assert (found.status, found.layout, found.distance_ft) == ("kept", good, 0)


def test_a_room_off_the_grid_stays_where_only_the_grid_would_move_it(case):
    """The table alone is in the way; the nook stands between two lines of the grid and keeps its place."""
    drawn = sketch(("two", (0, 4), (12, 8)), ("small", (24.4, 9.3), (8, 8)))
    found = improved(case, drawn, seconds=20, stop=NEVER)
    assert found.layout.of("nook") == drawn.of("nook")
    assert found.distance_ft < found.least_ft
    assert found.layout.of("table") != drawn.of("table")


def test_a_yard_in_which_nothing_fits():
    """A table that must be and has no room."""
    case = tiny(TEXT.replace("width: 12, depth: 8, seats: 4", "width: 36, depth: 28, seats: 4"))
    drawn = Layout((Placement("nook", "small", 20, 6, 8, 8, "+y"),))
    found = improved(case, drawn, seconds=5, stop=NEVER)
    assert (found.status, found.layout) == ("nothing_fits", None)
    both = tiny(
        TEXT.replace("at_least: 12}", "at_least: 30}").replace("kind: nook\n", "kind: nook\n      required: true\n")
    )
    assert improved(both, drawn, seconds=9, stop=NEVER).status == "nothing_fits"


def test_that_nothing_fits_is_proven_twice(monkeypatch):
    """Where the second proof does not come to an end, nothing is claimed."""
    case = tiny(TEXT.replace("width: 12, depth: 8, seats: 4", "width: 36, depth: 28, seats: 4"))
    monkeypatch.setattr(improving, "anything_fits", lambda *_, **__: Answer("undecided", None, None, None))
    found = improved(case, SKETCHES["without what must be"], seconds=2, stop=NEVER)
    assert (found.status, found.layout) == ("undecided", None)


def test_no_time_is_undecided(case):
    """And nothing is said of how near anything is."""
    stopped = threading.Event()
    stopped.set()
    found = improved(case, SKETCHES["too near"], seconds=5, stop=stopped)
    assert (found.status, found.layout, found.least_ft) == ("undecided", None, None)


def test_what_the_judge_refuses_is_passed_over(case, monkeypatch):
    """The first few are refused one by one, then what stands near to them; then nearness is no longer proven."""
    refused, real = [], Case.judged

    def judged(self, layout):
        verdict = real(self, layout)
        if verdict.holds and len(refused) < 4:
            refused.append(layout)
            (other,) = real(self, Layout(())).findings[:1]
            return replace(verdict, findings=(replace(other, rule="drains", rooms=("table",)),))
        return verdict

    monkeypatch.setattr(Case, "judged", judged)
    found = improved(case, SKETCHES["too near"], seconds=20, stop=NEVER)
    assert found.status == "near"
    assert found.refused == ("drains",)
    assert len(set(refused)) == 4
    assert found.layout not in refused
    third = distance_ft(case.rooms, SKETCHES["too near"], refused[2])
    assert found.least_ft == pytest.approx(third, abs=0.05)
    assert found.least_ft < found.distance_ft - 0.1
    assert f"None on the grid can be nearer than {found.least_ft:.1f} ft." in said(found, case.scenario)


def test_what_the_solver_has_not_proven_is_not_called_nearest(case, monkeypatch):
    """It found a layout and had no time to look at all nearer ones."""
    real = Nearest.next

    def cut_off(self, *, seconds, stop):
        return replace(real(self, seconds=seconds, stop=stop), verdict="feasible", bound=100)

    monkeypatch.setattr(Nearest, "next", cut_off)
    found = improved(case, SKETCHES["too near"], seconds=20, stop=NEVER)
    assert found.status == "near"
    assert 0 < found.least_ft < found.distance_ft
    assert "proven" not in said(found, case.scenario)


def test_what_a_change_counts(case):
    """A move along both axes, a turn, another size, a room that is gone or new."""
    drawn = sketch(("two", (8, 12), (12, 8)), ("small", (24, 18), (8, 8)))
    table, nook = drawn.placements

    def far(*places):
        return distance_ft(case.rooms, drawn, Layout(places))

    assert far(table, nook) == 0
    assert far(replace(table, x_ft=9, y_ft=14), nook) == 3
    assert far(replace(table, width_ft=8, depth_ft=12, x_ft=10, y_ft=10), nook) == TURNED_FT
    assert far(table, replace(nook, choice="large", width_ft=12, depth_ft=12)) == RESIZED_FT + 4
    assert far(table) == ABSENT_FT
    assert distance_ft(case.rooms, Layout((table,)), drawn) == ABSENT_FT
    assert COVERED_FT < TURNED_FT


def test_it_is_added_as_a_sketch_of_its_own():
    """Under a name that is free, read back to where it stood."""
    case = tiny(DRAWN)
    layout = sketch(("two", (8, 12), (12, 8)), ("small", (24, 18), (8, 8)))
    once = Case.of(patched(case.scenario, sketch_added(case, "mine", layout).patch))
    twice = patched(once.scenario, sketch_added(once, "mine", layout).patch)
    assert [one.name for one in twice.sketches] == ["mine", "mine, improved", "mine, improved 2"]
    assert [(room.room, room.at_ft) for room in twice.sketches[1].rooms] == [("table", (8, 12)), ("nook", (24, 18))]


def test_where_the_solver_comes_to_no_end_the_explorer_finds_one_that_holds(case, monkeypatch):
    """It holds, is as far as is said, no farther than twice the nearest here, and nothing is claimed to be proven."""
    drawn = SKETCHES["too near"]
    nearest = improved(case, drawn, seconds=20, stop=NEVER)
    monkeypatch.setattr(Nearest, "next", lambda *_, **__: Answer("undecided", None, None, None))
    found = improved(case, drawn, seconds=1.5, stop=NEVER)
    assert (found.status, found.least_ft) == ("near", None)
    assert case.judged(found.layout).holds
    assert found.distance_ft == pytest.approx(distance_ft(case.rooms, drawn, found.layout))
    assert nearest.distance_ft - 0.05 <= found.distance_ft <= 2 * nearest.distance_ft
    assert "proven" not in said(found, case.scenario)


def test_a_place_counts_how_far_it_is_from_where_the_room_is_drawn(case):
    """By the same measure as the distance of a layout, for every place of every size."""
    drawn = SKETCHES["turned"]
    problem = Explored(case, drawn).problem
    for index, room in enumerate(problem.rooms):
        for number in range(len(room.variants)):
            for y, x in ((0, 0), (3, 5)):
                state = tuple(Spot(number, x, y) if at == index else None for at in range(len(problem.rooms)))
                far_ft = distance_ft(case.rooms[index : index + 1], drawn, layout_of(problem, state))
                assert room.losses[number] + room.places[number][y, x] == pytest.approx(far_ft * CENTS_A_FOOT, abs=600)
