"""Length of lines inside areas, by groups."""

import numpy as np
import pytest
from shapely import LineString, Polygon, box

from optimizer.circulation.paving.areas import areas_of

LAWN, TERRACE, SLANTED = box(10, 0, 20, 10), box(0, 20, 6, 30), Polygon([(4, 4), (9, 7), (6, 12), (1, 9)])


def inside(*corners):
    """Length of one line in lawn and in terrace or slanted landing [ft]."""
    line = np.array([[*corners, *[corners[-1]] * (4 - len(corners))]], dtype=float)
    return areas_of(((LAWN,), (TERRACE, SLANTED), ())).within_ft(line)[:, 0].sum(axis=1)


def test_by_group():
    """Across the lawn 10 ft, along the terrace's middle 10 more; nothing in a group without areas."""
    assert inside((0, 5), (30, 5))[0] == pytest.approx(10, abs=0.03)
    assert inside((3, 15), (3, 35)) == pytest.approx((0, 10, 0), abs=0.03)
    assert inside((25, 5), (15, 5), (15, 25), (3, 25)) == pytest.approx((5 + 5, 3, 0), abs=0.06)


@pytest.mark.parametrize("line", [((10, -5), (10, 15)), ((12, 10), (30, 10)), ((22, 0), (22, 9))])
def test_along_an_edge_is_beside_it(line):
    """What runs along an edge, or past an area, counts for nothing."""
    assert list(inside(*line)) == [0, 0, 0]


def test_a_slanted_area():
    """As the geometry library measures it, to the breadth of the edge."""
    corners = ((0, 5), (12, 9), (5, 2), (5, 14))
    measured = LineString(corners).intersection(SLANTED).length
    assert inside(*corners)[1] == pytest.approx(measured, abs=0.1)


def test_no_areas_at_all():
    """Every length is 0."""
    assert areas_of(((), ())).within_ft(np.zeros((3, 4, 2))).tolist() == [[[0, 0, 0]] * 3] * 2


def test_step_by_step():
    """What each step of a line has inside is known apart."""
    line = np.array([[(25, 5), (15, 5), (15, 25), (3, 25)]], dtype=float)
    lawn, terrace = areas_of(((LAWN,), (TERRACE,))).within_ft(line)[:, 0]
    assert lawn == pytest.approx((5, 5, 0), abs=0.03)
    assert terrace == pytest.approx((0, 0, 3), abs=0.03)
