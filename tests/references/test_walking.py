"""Shortest ways and walkway widths against figures from outside."""

from math import sqrt

import pytest
from shapely import Polygon, box

from optimizer.circulation import CLEAR_WIDTH_FT, shortest_way

WIDE = box(-10, -10, 10, 10)
# (0,0) to (1,1) to (1.5,1) to (3,-1) to (3.5,-1) to (5,0): sqrt(2) + 1/2 + 5/2 + 1/2 + sqrt(13)/2
PAST_WALLS_FT = 6.7169892


@pytest.mark.parametrize(
    ("domain", "start", "end", "length_ft"),
    [
        (WIDE - box(1, -1, 3, 1), (0, 0), (4, 0), 2 * sqrt(2) + 2),
        (WIDE - box(1, -0.5, 3, 0.5), (0, 0), (4, 0), sqrt(5) + 2),
        (Polygon([(0, 0), (4, 0), (4, 2), (2, 2), (2, 4), (0, 4)]), (1, 4), (4, 1), 2 * sqrt(5)),
        (box(-1, -3, 6, 3) - box(1, -3, 1.5, 1) - box(3, -1, 3.5, 3), (0, 0), (5, 0), PAST_WALLS_FT),
    ],
    ids=["round a square", "round a bar", "inside an L", "past two walls"],
)
def test_closed_forms(domain, start, end, length_ft):
    """The way has the length that plane geometry gives; source: arithmetic on the corners it must pass."""
    found = shortest_way(domain, start, end)
    assert found is not None
    assert found[0] == pytest.approx(length_ft, abs=1e-6)


def test_width_of_a_walkway():
    """A clear way is 36 in wide: NKBA Kitchen Planning Guideline 7, as quoted by trade pages."""
    assert CLEAR_WIDTH_FT * 12 == 36
