"""What holds for every network of ways on open land."""

from math import dist, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.sparse.csgraph import minimum_spanning_tree

from optimizer.circulation.paving.candidates import SLANT_FT
from optimizer.circulation.paving.graph import TURN_FT
from tests.open_land import length_of, network_over

PLACES = st.lists(st.tuples(st.integers(-60, 60), st.integers(-60, 60)), min_size=3, max_size=6, unique=True)


def eighth_length(one, other):
    """Shortest line in steps of 45 degrees between two points, square where its slanted part would be under 8 ft."""
    across, along = sorted((abs(one[0] - other[0]), abs(one[1] - other[1])))
    return along + across if across * sqrt(2) < SLANT_FT else along - across + across * sqrt(2)


@settings(max_examples=40, deadline=None)
@given(PLACES)
def test_between_the_steiner_bound_and_the_ways_one_by_one(places):
    """A network is no longer than its trips' shortest ways together, but for 8 ft that a bend less may cost each, and no
    shorter than sqrt 3 / 2 of the shortest tree over its ends: the least that a Steiner tree may have (Gilbert and
    Pollak's ratio; from memory).
    """
    points = [(float(x), float(y)) for x, y in places]
    pairs = [(0, end) for end in range(1, len(points))]
    length = length_of(network_over(points, pairs))
    apart = np.array([[dist(a, b) for b in points] for a in points])
    tree = float(minimum_spanning_tree(apart).sum())
    assert length >= tree * sqrt(3) / 2 - 0.5  # pieces under 0.05 ft are not laid
    assert length <= sum(eighth_length(points[0], end) + TURN_FT for end in points[1:]) + 1e-6


@settings(max_examples=25, deadline=None)
@given(PLACES)
def test_legs_run_in_steps_of_45_degrees(places):
    """Every leg between round places turns by eighths only."""
    points = [(float(x), float(y)) for x, y in places]
    for leg in network_over(points, [(0, end) for end in range(1, len(points))]):
        for (x0, y0), (x1, y1) in zip(leg.points[:-1], leg.points[1:], strict=True):
            across, along = sorted((abs(x1 - x0), abs(y1 - y0)))
            assert min(across, along - across) == pytest.approx(0, abs=0.02)
