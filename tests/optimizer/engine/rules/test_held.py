"""What is held, in the engine: every layout that it passes keeps it by the check, in every pose and off the grid."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.brief import Hold
from optimizer.check import CHECKS, CheckCase
from optimizer.derived import Derived
from optimizer.engine.problem import layout_of, state_of
from optimizer.layout import Layout, placed_of
from optimizer.layout.pose import SYMMETRIES, Pose
from tests.explored import explored, states
from tests.yards import PLAIN_SITE, holding, plain_rooms, plain_yard, stand

PLAIN = plain_yard(ceiling=None)
LEFT_HALF = ((0, 0), (30, 0), (30, 40), (0, 40))


def broken(scenario, layout):
    """What the check says of holds."""
    return [*CHECKS["held"](CheckCase(Derived(scenario, placed_of(plain_rooms(), layout))))]


def passed(*holds):
    """Scenario and layouts that a short search passes, with the problem and their states."""
    scenario = holding(PLAIN, *holds)
    explorer = explored(scenario, plain_rooms(), seed=3)
    problem = explorer.board.problem
    return scenario, problem, [(state, layout_of(problem, state)) for state in states(explorer)]


@pytest.mark.parametrize(
    "hold",
    [
        Hold("nook", at_ft=(40, 20)),
        Hold("cooker", at_ft=(38, 18), front="-x"),
        Hold("nook", within=LEFT_HALF),
        Hold("table", not_in=LEFT_HALF),
        Hold("cooker", front="-x"),
        Hold("table", front="-x"),
        Hold("fire", front="+x", not_in=((0, 0), (20, 0), (20, 40), (0, 40))),
    ],
)
def test_every_layout_keeps_the_hold(hold):
    """Rooms with a front and without one; without the hold the same search passes layouts that break it."""
    scenario, problem, found = passed(hold)
    with_room = [layout for _, layout in found if layout.of(hold.room)]
    assert with_room
    assert not [layout for layout in with_room if broken(scenario, layout)]
    assert all(state_of(problem, layout) == state for state, layout in found)
    free = [layout for _, layout in passed()[2]]
    assert [layout for layout in free if broken(scenario, layout)]


@pytest.mark.parametrize("matrix", SYMMETRIES)
def test_a_place_between_grid_lines(matrix):
    """In each of the eight poses: the corner is exact, sizes are rounded up by less than a step, and the layout comes
    back as the state that it was."""
    pose = Pose(matrix, (70.0, 70.0))
    (nook,) = pose.layout(Layout((stand("nook", 40.3, 18.6, 8, 7),))).placements
    turned = replace(PLAIN, site=pose.site(PLAIN_SITE))
    scenario = holding(turned, Hold("nook", at_ft=(nook.x_ft, nook.y_ft), front=nook.front))
    explorer = explored(scenario, plain_rooms())
    found = [(state, layout_of(explorer.board.problem, state)) for state in states(explorer)]
    assert any(layout.of("nook") for _, layout in found)
    for state, layout in found:
        place = layout.of("nook")
        if place is None:
            continue
        assert (place.x_ft, place.y_ft) == pytest.approx((nook.x_ft, nook.y_ft), abs=1e-9)
        assert 0 <= place.width_ft - nook.width_ft < 1
        assert 0 <= place.depth_ft - nook.depth_ft < 1
        assert not broken(scenario, layout)
        assert state_of(explorer.board.problem, layout) == state


def test_cells_cover_a_room_between_grid_lines():
    """A room of 8 x 7 ft at 40.3, 18.6 reaches into 9 columns and 8 rows; at 40, 18 into 8 and 7."""
    for at, size in (((40.3, 18.6), {(9, 8), (8, 9)}), ((40, 18), {(8, 7), (7, 8)}), ((40.01, 18.0), {(8, 7), (7, 8)})):
        problem = passed(Hold("nook", at_ft=at))[1]
        nook = problem.rooms[3]
        assert {variant.size for variant in nook.variants} == size
        assert [int(np.sum(cells)) for cells in nook.allowed] == [1, 1]
