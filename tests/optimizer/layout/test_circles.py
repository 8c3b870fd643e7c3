"""Circles on the plan: ground, distances, where one steps in, what people are led round; by hand."""

from math import hypot, pi, sqrt

import pytest
from shapely import Point

from optimizer.layout import Layout, footprint, placed_of, rectangle, shared_edge_ft, stepped_over, walked_round
from optimizer.layout.pose import SYMMETRIES, Pose
from tests.yards import circled, round_at, stand

ROUND = round_at("ring", 10, 20, 16)


def test_the_ground_is_the_disc():
    """Area and sides of a circle 16 ft across, with a corner of the ring on each side."""
    assert ROUND.area_sqft == pytest.approx(64 * pi)
    assert footprint(ROUND).area == pytest.approx(64 * pi, rel=5e-4)
    assert footprint(ROUND).bounds == pytest.approx((10, 20, 26, 36))
    assert rectangle(ROUND).area == 256


def test_distances_are_the_discs():
    """Two circles of 8 and 4 ft with middles 30 and 40 ft apart; a circle and a corner 9 and 12 ft off its middle."""
    other = round_at("other", 18 + 30 - 4, 28 + 40 - 4, 8)
    assert footprint(ROUND).distance(footprint(other)) == pytest.approx(50 - 12, abs=0.01)
    corner = stand("nook", 18 + 9, 28 + 12, 8, 7)
    assert footprint(ROUND).distance(rectangle(corner)) == pytest.approx(15 - 8, abs=0.01)
    assert rectangle(ROUND).distance(rectangle(corner)) == pytest.approx(hypot(1, 4))


def test_a_circle_shares_no_edge():
    """Beside a room that its square is flush with."""
    assert shared_edge_ft(ROUND, stand("nook", 26, 20, 8, 7)) == 0
    assert shared_edge_ft(stand("fire", 10, 20, 16, 16), stand("nook", 26, 20, 8, 7)) == 7


def test_one_steps_in_over_a_chord():
    """As wide as the widest way, before the axis point of each side."""
    (x0, y0), (x1, y1) = stepped_over(ROUND, "+x")
    assert (x0, x1) == pytest.approx((18 + sqrt(64 - 2.5**2),) * 2)
    assert (y0, y1) == pytest.approx((25.5, 30.5))
    assert stepped_over(ROUND, "-y")[0] == pytest.approx((15.5, 28 - sqrt(64 - 2.5**2)))


def test_people_are_led_round_the_whole_disc():
    """A polygon round it that touches its sides and sticks out by a fiftieth at most."""
    around = walked_round(ROUND)
    assert around.covers(Point(18, 28).buffer(8 - 1e-6))
    assert around.bounds == pytest.approx(ROUND_BOUNDS)
    assert max(hypot(x - 18, y - 28) for x, y in around.exterior.coords) < 8 * 1.02


ROUND_BOUNDS = (10, 20, 26, 36)


@pytest.mark.parametrize("matrix", SYMMETRIES)
def test_a_turned_circle_is_one(matrix):
    """Its disc lies where the disc is turned to, and back again."""
    pose = Pose(matrix, (3.0, -7.0))
    posed = pose.layout(Layout((ROUND,)))
    assert footprint(posed.placements[0]).centroid.coords[0] == pytest.approx(pose.point((18, 28)))
    assert posed.placements[0].is_circle
    assert pose.layout_back(posed).placements == (ROUND,)


def test_ways_are_led_round_the_ring_of_seats():
    """Eight sides round all that stands, each clear of it; in a square the box round it all."""
    (room,) = placed_of((circled("ring", 16),), Layout((ROUND,)))
    (kept,) = room.kept_from_paths
    (pit,) = room.items("fire pit")
    assert kept.covers(pit)
    assert len(kept.exterior.coords) == 9
    assert kept.area == pytest.approx(8 * (sqrt(2) - 1) * 2)  # an octagon round the corners of a pit of 2 x 2 ft
