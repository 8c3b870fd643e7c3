"""Ways for vehicles through yards of a few boxes: what is exactly wide enough is found, and an inch less is not."""

from math import inf, sqrt

import numpy as np
import pytest
import shapely
from shapely import LineString, Polygon, box

from optimizer.catalogue import Vehicle
from optimizer.derived.futures.course import Course, Gate
from optimizer.derived.futures.drive import Drive, Stuck, drive
from optimizer.derived.futures.sweep import swept_along

GOAL = box(10, 70, 30, 90)


def machine(width_ft: float, *, length_ft: float = 12.0, radius_ft: float = 10.0, steepest: float = 0.2) -> Vehicle:
    return Vehicle("machine", width_ft, length_ft, 10.0, radius_ft, steepest)


def course(vehicle: Vehicle, *blocks: Polygon, slope: float = 0.0, rough: Polygon | None = None) -> Course:
    """A yard of 80 x 100 ft with a street before it, a gate 30 ft wide, and these blocks; it rises along y."""
    yard = box(0, 0, 80, 100)
    fence = yard.exterior.difference(box(30, -1, 60, 1)).buffer(0.01)
    ground = shapely.union_all([yard, box(0, -30, 90, 0)]).difference(shapely.union_all([fence, *blocks]))
    return Course(
        ground=ground,
        goal=GOAL,
        gates=(Gate("drive", (45.0, 0.0), 30.0, (0.0, 1.0)),),
        vehicle=vehicle,
        height_ft=lambda points: slope * points[:, 1],
        rough=lambda points: np.where(shapely.contains_xy(rough or Polygon(), *points.T), 5.0, 1.0),
    )


def passage(width_ft: float, *, left_ft: float = 39.7) -> tuple[Polygon, Polygon]:
    """Two blocks across the yard with a passage between them, its sides on no whole foot."""
    return box(0, 30, left_ft, 50), box(left_ft + width_ft, 30, 80, 50)


@pytest.mark.parametrize(("width_ft", "comes"), [(8.0, True), (10.0, True), (10.1, False)])
def test_a_straight_passage_of_ten_feet(width_ft: float, comes: bool) -> None:
    """It lets 10 ft through and not 10.1."""
    assert isinstance(drive(course(machine(width_ft), *passage(10.0))), Drive) == comes


def test_a_way_lies_on_free_ground_all_along() -> None:
    """What is swept again from the poses that were found stays off the blocks, and ends in the goal."""
    there = course(machine(8.0), *passage(10.0), box(20, 60, 45, 64))
    found = drive(there)
    assert isinstance(found, Drive)
    ground = swept_along(there.vehicle, found.poses)
    assert there.ground.buffer(0.03).covers(ground)
    assert ground.intersects(GOAL)
    steps = np.hypot(*np.diff(found.poses[:, :2], axis=0).T)
    assert steps.max() < 2
    assert found.gate == "drive"


def test_a_corner_is_turned_only_where_there_is_room() -> None:
    """Between blocks that leave two corridors at a right angle, 10.99 ft each would do for the one best arc (see
    `test_moves.py`): 12 ft is found, 10 is not.
    """
    least = sqrt(14**2 + 6**2) - 6 / sqrt(2)
    for width_ft, comes in ((least + 1.0, True), (least - 1.0, False)):
        x = 40.0
        inner, outer = box(0, 30, x, 60), box(x + width_ft, 0.5, 80, 100)
        above = box(0, 60 + width_ft, x + width_ft, 100)
        goal_side = course(machine(8.0), inner, outer, above)
        found = drive(shapely_goal(goal_side, box(2, 60, 8, 60 + width_ft)))
        assert isinstance(found, Drive) == comes


def shapely_goal(there: Course, goal: Polygon) -> Course:
    return Course(there.ground, goal, there.gates, there.vehicle, there.height_ft, there.rough)


@pytest.mark.parametrize(("slope", "comes"), [(0.2, True), (0.21, False)])
def test_a_grade_that_it_takes(slope: float, comes: bool) -> None:
    """Straight up a yard that rises 20 % to a goal all across it; a little steeper and no way leads up it."""
    found = drive(
        shapely_goal(course(machine(8.0), box(0, 1, 39, 100), box(51, 1, 80, 100), slope=slope), box(0, 90, 80, 99))
    )
    assert isinstance(found, Drive) == comes
    if isinstance(found, Drive):
        assert found.steepest == pytest.approx(0.2, abs=1e-6)


def test_rough_ground_is_driven_round() -> None:
    """Beds in the straight line are left aside for a longer way on lawn."""
    bed = box(20, 40, 60, 55)
    plain, kept = drive(course(machine(8.0))), drive(course(machine(8.0), rough=bed))
    assert isinstance(plain, Drive)
    assert isinstance(kept, Drive)
    crossed = [LineString(way.poses[:, :2]).intersection(bed.buffer(-0.1)).length for way in (plain, kept)]
    assert crossed[0] > 10
    assert crossed[1] < crossed[0] / 2


def test_where_it_gets_stuck() -> None:
    """Behind a wall with a passage too narrow it is nowhere near; before it cannot turn it tells what it would hit."""
    assert drive(course(machine(10.1), *passage(10.0))).left_ft == inf  # type: ignore[union-attr]
    tight = drive(
        course(
            machine(8.0, length_ft=20.0, radius_ft=15.0), box(0, 30, 50, 66), box(59, 30, 80, 100), box(30, 76, 60, 100)
        )
    )
    assert isinstance(tight, Stuck)
    assert tight.blocked
