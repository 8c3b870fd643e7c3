"""Shortest ways on any polygon."""

from itertools import pairwise
from math import dist, hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPolygon, Polygon, box

from optimizer.circulation import shortest_way
from optimizer.circulation.visibility import turning_points

YARD = box(0, 0, 20, 20)
PLACE = st.tuples(st.floats(0, 20), st.floats(0, 20))


def test_bends_only_at_reflex_corners():
    """Corners of a room's inside are no turning points; corners of what stands in it are."""
    assert turning_points(YARD).tolist() == []
    assert sorted(map(tuple, turning_points(YARD - box(5, 5, 7, 8)).tolist())) == [(5, 5), (5, 8), (7, 5), (7, 8)]


def test_in_plain_sight():
    """What is in sight is reached straight, and a place is at no distance from itself."""
    assert shortest_way(YARD, (1, 1), (4, 5)) == (5.0, ((1.0, 1.0), (4.0, 5.0)))
    length, _ = shortest_way(YARD, (3, 3), (3, 3))
    assert length == pytest.approx(0, abs=1e-6)


def test_no_way():
    """No way leads to another part, out of the ground, or across an empty one."""
    parts = MultiPolygon([box(0, 0, 5, 5), box(6, 0, 9, 5)])
    assert shortest_way(parts, (1, 1), (7, 1)) is None
    assert shortest_way(YARD, (1, 1), (30, 1)) is None
    assert shortest_way(Polygon(), (1, 1), (2, 1)) is None


def test_no_tunnel_through_a_thin_wall():
    """A wall as thin as 0.01 ft is walked round."""
    wall = box(10, 2, 10.01, 20)
    assert shortest_way(YARD - wall, (9, 12), (11, 12))[0] == pytest.approx(2 * hypot(1, 10) + 0.01, abs=0.01)


@settings(max_examples=60, deadline=None)
@given(PLACE, PLACE)
def test_a_way_is_no_shorter_than_straight(start, end):
    """A way is as long as its pieces, stays in the ground, and is never shorter than the straight line."""
    domain = YARD - box(4, 3, 9, 16) - box(12, 8, 14, 19)
    found = shortest_way(domain, start, end)
    if found is None:
        return
    length, points = found
    assert length >= dist(start, end) - 1e-6
    assert length == pytest.approx(sum(dist(a, b) for a, b in pairwise(points)), abs=1e-6)
    assert shortest_way(domain, end, start)[0] == pytest.approx(length, abs=1e-6)
