"""Cells spare exact questions, and never a line that is on the ground."""

from itertools import combinations

import numpy as np
import pytest
import shapely
from shapely import Point, Polygon, box

from optimizer.circulation.paving.candidates import lines_between
from optimizer.circulation.paving.nearby import nearby

SLANTED = Polygon([(0.3, 0), (30, 4.2), (26, 21.7), (7, 25), (2.1, 14)])
GROUNDS = (
    box(0, 0, 24, 18),
    SLANTED.difference(box(8, 8, 13.5, 12)),
    shapely.union_all([box(0, 0, 10, 9), box(14, 2, 30, 17)]),
    SLANTED.difference(Point(15, 12).buffer(4.3, quad_segs=3)),
)


def places(ground, count=24):
    """Corners of a ground, whole feet in it, and a few points anywhere."""
    corners = shapely.get_coordinates(ground)[:count]
    anywhere = np.random.default_rng(3).uniform((-1, -1), (31, 26), (count, 2))
    return np.concatenate([corners, anywhere, np.round(anywhere)])


@pytest.mark.parametrize("ground", GROUNDS)
def test_no_line_on_the_ground_is_lost(ground):
    """Of all lines between corners, whole feet and other points, those on the ground are among those that may be."""
    points = places(ground)
    pairs = np.array(list(combinations(range(len(points)), 2)))
    whole = nearby(box(-9, -9, 40, 40))
    near = nearby(ground)
    every, found = lines_between(whole, points, pairs), lines_between(near, points, pairs)
    on_it = every.only(near.covers(every.corners))
    held = {corners.tobytes() for corners in found.corners}
    assert len(on_it.first) > 100
    assert all(corners.tobytes() in held for corners in on_it.corners)
    # Of the others hardly any is left to ask for.
    assert len(found.first) < 0.6 * len(every.first)


@pytest.mark.parametrize("ground", GROUNDS)
def test_cells_that_lie_off_it_hold_none_of_it(ground):
    """A cell that is not near does not meet the ground; the ring round all cells is not near."""
    near = nearby(ground)
    rows, columns = near.near.shape
    for row in range(rows):
        for column in range(columns):
            left, low = near.left_ft + column, near.low_ft + row
            if box(left, low, left + 1, low + 1).intersects(ground):
                assert near.near[row, column]
    rim = np.ones(near.near.shape, dtype=bool)
    rim[1:-1, 1:-1] = False
    assert not near.near[rim].any()


def test_a_ground_that_is_empty_holds_nothing():
    """No cell, and no line."""
    near = nearby(Polygon())
    assert not near.near.any()
    assert len(lines_between(near, np.array([[0.0, 0.0], [1.0, 0.0]]), np.array([[0, 1]])).first) == 0
