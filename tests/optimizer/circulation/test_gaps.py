"""Ground between a way and what it runs along."""

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, Polygon, box

from optimizer.circulation.gaps import gaps_between, gaps_round

TERRACE = box(0, 0, 10, 10)
WHOLE = st.integers(0, 16)


def between(piece, other=TERRACE, reach=3.0):
    """The gap itself, without the piece."""
    return shapely.union_all(gaps_between([piece], [other], reach)).difference(shapely.union(piece, other))


@pytest.mark.parametrize(("apart", "area"), [(2, 2 * 6), (2.9, 2.9 * 6), (3, 0), (4, 0), (0, 0)])
def test_what_lies_along_a_side_within_reach(apart, area):
    """A way of 6 ft along a side leaves a strip as wide as it lies apart; from the reach on there is none."""
    assert between(box(10 + apart, 2, 14 + apart, 8)).area == pytest.approx(area)


def test_a_wedge_ends_square_where_it_is_as_wide_as_the_reach():
    """Beside a way that leaves a side at 45 degrees the wedge is filled up to where it opens by 3 ft."""
    way = Polygon([(10, 0), (14, 0), (24, 10), (20, 10)])
    assert between(way).equals(Polygon([(10, 0), (13, 3), (10, 3)]))


def test_off_a_corner_nothing_runs_along():
    """What lies diagonally off a corner faces no side."""
    assert between(box(11, 11, 14, 14)).is_empty


def test_a_piece_is_not_held_against_itself():
    """A way alone has no gaps, and no pieces make none."""
    assert gaps_between([TERRACE], [TERRACE], 3.0) == ()
    assert gaps_between([], [TERRACE], 3.0) == ()
    assert gaps_between([TERRACE], [], 3.0) == ()


@given(WHOLE, WHOLE, st.integers(1, 8), st.integers(1, 8))
def test_against_every_foot_of_the_plan(x, y, width, depth):
    """Foot by foot: ground is a gap if, straight along an axis, terrace and way lie less than 3 ft apart about it."""
    way = box(x, y, x + width, y + depth)
    taken = np.zeros((2, 32, 32), dtype=bool)
    taken[0, 0:10, 0:10] = taken[1, y : y + depth, x : x + width] = True
    gap = np.zeros((32, 32), dtype=bool)
    for one, other in ((taken[0], taken[1]), (taken[1], taken[0])):
        for feet in (1, 2):
            for axis in (0, 1):
                for step in range(1, feet + 1):
                    before, after = np.roll(one, step, axis), np.roll(other, step - feet - 1, axis)
                    gap |= before & after
    assert between(way).area == pytest.approx((gap & ~taken.any(axis=0)).sum())


def test_ground_between_a_way_and_a_circle():
    """A way 4 ft wide passes 1 ft from a circle of 8 ft: what lies straight out of its edge there within 3 ft is paved."""
    ring = Point(0, 0).buffer(8, quad_segs=64)
    way = box(-20, 9, 20, 13)
    (found,) = gaps_round([way], ring, 3.0)
    gap = found.difference(ring).difference(way)
    half = (11**2 - 9**2) ** 0.5  # where the way's near edge leaves the 3 ft round the circle
    assert gap.bounds == pytest.approx((-half, 8 * 9 / 11, half, 9), abs=0.02)
    assert list(gaps_round([box(-20, 11.5, 20, 13)], ring, 3.0)) == []
    (across,) = gaps_round([box(-2, 0, 2, 20)], ring, 3.0)
    assert across.difference(ring).difference(box(-2, 0, 2, 20)).area == pytest.approx(0, abs=1e-6)
