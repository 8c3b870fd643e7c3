"""Shares of what is seen that are known by hand: shadows of walls on level ground, exact."""

import pytest
from shapely import LineString, Point, Polygon, box

from optimizer.fields.seen import Target, seen_part, seen_share
from optimizer.fields.sight import Eye, Screen

EYE = Eye((0.0, 0.0), 5.0)
SQUARE = box(20, -5, 30, 5)
ANGLE = Polygon([(5, -9), (9, -9), (9, 9), (5, 9), (5, 7), (7, 7), (7, -7), (5, -7)])


def share(*screens, eye=EYE, shape=SQUARE, z_ft=2.0):
    """Share that is seen."""
    return seen_share(eye, Target(shape, z_ft), screens)


@pytest.mark.parametrize(("screen", "seen"), [
    (Screen(LineString([(10, 0), (10, 50)]), 9), 1 / 2),  # hides one half of the square
    (Screen(LineString([(10, 0), (10, 1)]), 9), 1 - 2.5 / 10),  # a shadow that grows from 2 to 3 ft
    (Screen(box(8, 0, 10, 1), 9), 1 - 3.125 / 10),  # the corner at 8 ft throws the wider one: 2.5 to 3.75 ft
    (Screen(LineString([(20, -50), (20, 50)]), 3), 0),  # the line over it comes down at 20 x 3 / 2 = 30 ft
    (Screen(LineString([(15, -50), (15, 50)]), 3), 3 / 4),  # by similar triangles hidden to 15 x 3 / 2 = 22.5 ft
    (Screen(LineString([(15, -50), (15, 50)]), 2), 1),  # as low as what is looked at
    (Screen(LineString([(15, -50), (15, 50)]), 9, 4), 1),  # hangs 4 ft up: the line under it ends at 45 ft
    (Screen(LineString([(7.5, -50), (7.5, 50)]), 9, 4), 1 / 4),  # the same, nearer: open to 7.5 x 3 = 22.5 ft
    (Screen(LineString([(40, -50), (40, 50)]), 9), 1),  # behind it
    (Screen(box(25, -5, 30, 5), 9), 1 / 2),  # on it
    (Screen(ANGLE, 9), 0),  # no line slips through between its parts
    (Screen(LineString(), 9), 1),
])  # fmt: skip
def test_part_of_a_square(screen, seen):
    """By similar triangles from an eye 5 ft up to a square of 10 ft, 20 ft off and seen 2 ft up."""
    assert share(screen) == pytest.approx(seen, abs=1e-9)


def test_two_shadows_count_once():
    """What two walls hide both is hidden once, and what each hides alone is hidden."""
    walls = [Screen(LineString([(10, low), (10, 50)]), 9) for low in (1, 0)]
    beside = Screen(LineString([(10, -1), (10, 0)]), 9)  # a shadow that grows from 2 to 3 ft
    assert share(*walls) == pytest.approx(1 / 2)
    assert share(beside, *walls) == pytest.approx(1 / 4)
    assert seen_part(EYE, Target(SQUARE, 2.0), walls).area == pytest.approx(50)


def test_looking_up():
    """An eye 1 ft up, 10 ft before a 2 ft wall: what is 3.5 ft up is seen over it to 10 x 2.5 = 25 ft, 4 ft up to 30."""
    low, wall = Eye((0.0, 0.0), 1.0), Screen(LineString([(10, -50), (10, 50)]), 2)
    seen = [share(wall, eye=low, z_ft=z_ft) for z_ft in (1.0, 3.0, 3.5, 4.0)]
    assert seen == pytest.approx([0, 0, 1 / 2, 1])


def test_an_eye_within():
    """From within what hides nothing is seen, over its top what lies beyond 4 x 3 / 0.5 = 24 ft."""
    court = Screen(box(-4, -50, 4, 50), 4.5)
    assert share(court, eye=Eye((0.0, 0.0), 4.0)) == 0
    assert share(court, z_ft=2.0) == pytest.approx((30 - 24) / 10)


def test_lines_and_points():
    """Of a line its length counts, of a point all or nothing; a line of sight that grazes is free."""
    wall = Screen(box(10, 0, 11, 50), 9)
    assert share(wall, shape=LineString([(20, -5), (20, 15)])) == pytest.approx(1 / 4)
    assert [share(wall, shape=Point(20, y)) for y in (-1, 0, 1)] == [1, 1, 0]
