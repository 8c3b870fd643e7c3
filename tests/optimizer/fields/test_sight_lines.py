"""Lines of sight that graze, pass under, or run through the seams of an outline; samples of shapes."""

import numpy as np
import pytest
from shapely import LineString, Point, Polygon, box

from optimizer.fields.sight import FEW, MANY, Eye, Screen, blocked, sample_points, visible_share

ANGLE = Polygon([(0, 0), (20, 0), (20, 10), (10, 10), (10, 20), (0, 20)])


def hidden(start, end, screen):
    """Whether one line is hidden."""
    return bool(blocked(np.array([start], dtype=float), np.array([end], dtype=float), (screen,))[0])


@pytest.mark.parametrize(("start", "end", "expected"), [
    ((-5, -5, 3), (25, -5, 3), False),
    ((-5, 0, 3), (25, 0, 3), False),
    ((-5, 10, 3), (25, 10, 3), True),
    ((10, -5, 3), (10, 25, 3), True),
    ((25, 25, 3), (10, 10, 3), False),
    ((12, 12, 3), (-2, -2, 3), True),
    ((11, 19, 3), (19, 11, 3), False),
    ((-5, 5, 12), (25, 5, 12), False),
    ((-5, 5, 8), (25, 5, 8), False),
    ((-5, 5, 7.9), (25, 5, 7.9), True),
])  # fmt: skip
def test_round_an_angle(start, end, expected):
    """Along a wall, at a corner and level with the top nothing is hidden; through any part of it all is."""
    assert hidden(start, end, Screen(ANGLE, 8.0)) is expected
    assert hidden(end, start, Screen(ANGLE, 8.0)) is expected


def test_under_a_crown():
    """A crown hides what is seen through it, not what is seen under it."""
    crown = Screen(Point(10, 0).buffer(5, quad_segs=4), 20.0, 6.0)
    assert not hidden((0, 0, 4), (20, 0, 4), crown)
    assert hidden((0, 0, 4), (20, 0, 14), crown)


def test_shares_are_means_over_eyes():
    """One eye sees all and one nothing."""
    wall = Screen(LineString([(-20, 5), (20, 5)]), 10.0)
    points = sample_points(box(-4, 8, 4, 12), 2.0, FEW)
    assert visible_share((Eye((0, 0), 5.0),), points, (wall,)) == 0
    assert visible_share((Eye((0, 0), 5.0), Eye((0, 20), 5.0)), points, (wall,)) == 0.5


def test_samples():
    """Nine of a rectangle, those inside of an angle, one of a thin ring's area, nine of a line, one of a point."""
    nine = sample_points(box(0, 0, 6, 3), 2.0, FEW)
    assert nine.tolist()[:2] == [[1, 0.5, 2], [3, 0.5, 2]]
    counts = [
        len(sample_points(shape, 0.0, FEW))
        for shape in (box(0, 0, 6, 3), ANGLE, LineString([(0, 0), (9, 0)]), Point(1, 1))
    ]
    assert counts == [9, 8, 9, 1]
    thin = box(0, 0, 9, 9).difference(box(0.1, 0.1, 8.9, 8.9))
    assert thin.covers(Point(sample_points(thin, 0.0, FEW)[0]))


def test_many_samples_lie_on_no_common_line():
    """Beyond any line along a side lie as many of them as the share says, within one."""
    spots = np.array(MANY)
    for share in np.linspace(0, 1, 41):
        beyond = (spots < share - 0.5).mean(axis=0)
        assert beyond == pytest.approx([share, share], abs=0.5 / len(MANY) + 1e-9)
