"""Which way round an outline runs, and which way its edges look."""

import pytest

from optimizer.scenario.rings import counter_clockwise, distance_ft, outside_ft, outward, ring_fault, signed_area_sqft

SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))


def test_area_has_the_sign_of_the_turn():
    """Counter-clockwise is positive; 4 x 4 is 16."""
    assert signed_area_sqft(SQUARE) == 16
    assert signed_area_sqft(SQUARE[::-1]) == -16


def test_a_clockwise_ring_is_turned_from_its_first_corner():
    """The first corner stays first."""
    assert counter_clockwise(((0.0, 0.0), (0.0, 4.0), (4.0, 4.0), (4.0, 0.0))) == SQUARE
    assert counter_clockwise(SQUARE) == SQUARE


@pytest.mark.parametrize(
    ("point", "normal"),
    [((2.0, 0.0), (0, -1)), ((4.0, 2.0), (1, 0)), ((2.0, 4.05), (0, 1)), ((-0.05, 2.0), (-1, 0))],
)
def test_walls_look_away_from_the_inside(point, normal):
    """Each side of a square looks its own way, for a point a little off it too."""
    assert outward(SQUARE, point) == normal


def test_distance_is_to_the_nearest_edge():
    """From inside and from past a corner; 3-4-5."""
    assert distance_ft(SQUARE, (1.0, 2.0)) == 1
    assert distance_ft(SQUARE, (7.0, 8.0)) == 5


@pytest.mark.parametrize(
    ("ring", "said"),
    [
        (((0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)), "cross"),
        (((0.0, 0.0), (1.0, 1.0), (2.0, 2.0)), "without area"),
        (((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)), "without area"),
        (((0.0, 0.0), (0.0, 0.0), (4.0, 0.0), (4.0, 4.0)), "twice in a row"),
        ((*SQUARE, (0.0, 0.0)), "twice in a row"),
    ],
)
def test_what_is_no_outline_is_said(ring, said):
    """Crossing edges, corners on one line and repeated corners are told apart."""
    assert said in ring_fault(ring)


def test_a_proper_outline_has_no_fault():
    """Neither way round is a fault."""
    assert ring_fault(SQUARE) is None
    assert ring_fault(SQUARE[::-1]) is None


def test_how_far_a_ring_reaches_out():
    """The farthest corner outside counts; touching from inside is not outside."""
    assert outside_ft(((1.0, 1.0), (6.0, 1.0), (6.0, 3.0), (1.0, 3.0)), SQUARE) == pytest.approx(2)
    assert outside_ft(((0.0, 0.0), (2.0, 0.0), (2.0, 2.0)), SQUARE) == 0
