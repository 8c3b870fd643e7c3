"""Walls and guards."""

from dataclasses import replace
from math import cos, hypot, pi, sin

import pytest

from optimizer.grading import grade
from optimizer.layout import Layout, placed_of
from optimizer.site import SpotLevel
from tests.optimizer.grading.slopes import OPEN_SITE, graded, on_plane
from tests.yards import circled, round_at, stand


def step(high_ft: float, *, at_x: float = 60.0):
    """Ground that is level at 0 west of a line, falls within 0.2 ft, and lies so much lower east of it."""
    spots = ((-50, 0.0), (at_x, 0.0), (at_x + 0.2, -high_ft), (150, -high_ft))
    levels = tuple(SpotLevel((x, y), z) for x, z in spots for y in (-50.0, 150.0))
    return replace(OPEN_SITE, levels=levels)


ROOM = stand("table", 46, 30, 14, 12)


@pytest.mark.parametrize(("drop_in", "count"), [(7.9, 0), (8.1, 1)])
def test_a_bank_takes_eight_inches(drop_in, count):
    """Up to 8 in of mean difference are graded with a bank, more need a wall."""
    assert len(graded(step(drop_in / 12), ROOM).walls) == count


def test_a_wall():
    """The wall stands along the edge and holds the whole difference."""
    (wall,) = graded(step(2.0), ROOM).walls
    assert (wall.room, wall.line, wall.length_ft) == ("table", ((60, 30), (60, 42)), 12)
    assert (wall.height_ft, wall.face_sqft) == (pytest.approx(2.0), pytest.approx(24.0))


def test_a_cut_needs_a_wall_too():
    """A room let into rising ground has a wall on its high side, and on its low side one for its fill."""
    walls = graded(on_plane(north=0.2), stand("table", 60, 30, 14, 20)).walls
    assert {wall.line[0][1] for wall in walls if wall.line[0][1] == wall.line[1][1]} == {30, 50}


@pytest.mark.parametrize(("drop_ft", "needed"), [(3.0, False), (3.01, True)])
def test_permit(drop_ft, needed):
    """With 1 ft of footing in the ground, 3 ft of face are 4 ft from the footing's bottom."""
    (wall,) = graded(step(drop_ft), ROOM).walls
    assert wall.needs_permit == needed


def test_the_wall_between_two_rooms_is_the_higher_ones():
    """Between rooms 24 in apart one wall stands, beside the 5 ft of the flight."""
    found = graded(on_plane(north=0.2), stand("fire", 60, 30, 8, 10), stand("nook", 60, 40, 8, 10))
    (wall,) = [wall for wall in found.walls if {y for _, y in wall.line} == {40}]
    assert (wall.room, wall.length_ft, wall.height_ft) == ("nook", 3, pytest.approx(2.0))


def test_a_house_is_no_wall():
    """Along the house and a door's landing nothing is held."""
    found = graded(on_plane(north=-0.2, house_floor=0.5), stand("table", 36, 0, 14, 12))
    assert not [wall for wall in found.walls if {y for _, y in wall.line} == {0}]


@pytest.mark.parametrize(("drop_in", "length_ft"), [(30.0, 0), (30.1, 12)])
def test_guard(drop_in, length_ft):
    """An edge 30.1 in above the ground needs a guard all along, one of 30.0 in none."""
    assert sum(guard.length_ft for guard in graded(step(drop_in / 12), ROOM).guards) == pytest.approx(length_ft)


@pytest.mark.parametrize(("away_ft", "needed"), [(2.5, True), (3.5, False)])
def test_the_drop_counts_within_three_feet(away_ft, needed):
    """Ground that drops 2.5 ft from the edge is within the 36 in of a guard, at 3.5 ft it is not."""
    assert bool(graded(step(4.0, at_x=60 + away_ft), ROOM).guards) == needed


def test_no_guard_where_the_ground_is_higher():
    """A deep cut needs walls and no guard of the room's."""
    found = graded(step(4.0, at_x=30), stand("table", 30.2, 30, 14, 12))
    assert found.walls
    assert not found.guards


def test_a_wall_follows_a_circle():
    """Round a circle 10 ft across on a bench 2 ft high the wall is as long as its edge, and stands along it."""
    site = replace(OPEN_SITE, levels=tuple(SpotLevel(at, z) for at, z in bench(2.0)))
    found = grade(site, placed_of((circled("ring", 10),), Layout((round_at("ring", 55, 55, 10),))))
    assert sum(wall.length_ft for wall in found.walls) == pytest.approx(10 * pi)
    assert sum(wall.face_sqft for wall in found.walls) == pytest.approx(2 * 10 * pi, rel=0.02)
    points = [point for wall in found.walls for point in wall.line]
    assert all(hypot(x - 60, y - 60) == pytest.approx(5) for x, y in points)
    assert len(points) >= 4 * 8


def bench(high_ft):
    """A square of ground round (60, 60), level and so much higher than all the ground a little beyond its circle."""
    ring = [(60 + 5.45 * cos(turn * pi / 16), 60 + 5.45 * sin(turn * pi / 16)) for turn in range(32)]
    low = [(60 + 5.48 * cos(turn * pi / 16), 60 + 5.48 * sin(turn * pi / 16)) for turn in range(32)]
    far = [(-40.0, -40.0), (140.0, -40.0), (140.0, 140.0), (-40.0, 140.0)]
    yield from (((60.0, 60.0), 0.0), *((at, 0.0) for at in ring), *((at, -high_ft) for at in (*low, *far)))


def test_earth_under_a_circle_is_the_discs():
    """On a plane that is cut and filled alike: a third as much of the mean depth as by hand, pi / 4 of the square's area.

    Mean of |x| over a disc of radius r is 4 r / 3 pi (a handbook's centroid of a half circle): 2.12 ft for r = 5.
    """
    found = grade(on_plane(east=0.1), placed_of((circled("ring", 10),), Layout((round_at("ring", 55, 55, 10),))))
    (earth,) = found.earth
    by_hand = 0.1 * 4 * 5 / (3 * pi) / 2 * 25 * pi / 27
    assert earth.cut_bcy == pytest.approx(by_hand, rel=0.05)
    assert earth.fill_ccy == pytest.approx(by_hand, rel=0.05)
