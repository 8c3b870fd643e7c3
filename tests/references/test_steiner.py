"""Networks of ways against shortest networks with known lengths.

Steiner trees: four corners of a unit square 1 + sqrt 3, three corners of an equilateral triangle sqrt 3 (textbook
results, Gilbert and Pollak 1968; from memory). A network with legs in steps of 45 degrees is at most
1 / cos(22.5 degrees) = 1.0824 times as long (geometry of a line replaced by two legs, derived).
"""

from math import cos, radians, sqrt

import pytest

from optimizer.circulation.paving.graph import TURN_FT
from tests.open_land import length_of, network_over

EIGHTHS = 1 / cos(radians(22.5))
SIDE = 40.0


def test_four_corners_of_a_square():
    """Never shorter than the Steiner tree, and no longer than one with legs in steps of 45 degrees need be, but for what
    one bend less may cost.
    """
    corners = [(0.0, 0.0), (SIDE, 0.0), (SIDE, SIDE), (0.0, SIDE)]
    length = length_of(network_over(corners, [(0, 1), (0, 2), (0, 3)])) / SIDE
    assert 1 + sqrt(3) - 1e-6 <= length <= (1 + sqrt(3)) * EIGHTHS + TURN_FT / SIDE


def test_three_corners_of_a_triangle():
    """The same of an equilateral triangle, whose Steiner tree measures sqrt 3 sides."""
    corners = [(0.0, 0.0), (SIDE, 0.0), (SIDE / 2, SIDE * sqrt(3) / 2)]
    length = length_of(network_over(corners, [(0, 1), (0, 2)])) / SIDE
    assert sqrt(3) - 1e-6 <= length <= sqrt(3) * EIGHTHS + 1e-6


@pytest.mark.parametrize("end", [(SIDE, 0.0), (0.0, SIDE), (SIDE, SIDE), (-SIDE, SIDE)])
def test_two_points_are_joined_straight(end):
    """Along an axis or at 45 degrees the shortest network of two points is the straight line."""
    assert length_of(network_over([(0.0, 0.0), end], [(0, 1)])) == pytest.approx(sqrt(end[0] ** 2 + end[1] ** 2))
