"""Lines and boxes across a heading."""

import pytest

from optimizer.derived.boxes import box_along, jambs


@pytest.mark.parametrize(
    ("heading", "right", "left"),
    [((0, 1), (12, 23), (8, 23)), ((1, 0), (13, 18), (13, 22)), ((-1, 0), (7, 22), (7, 18)), ((0.6, 0.8), None, None)],
)
def test_jambs(heading, right, left):
    """4 ft across, 3 ft ahead of (10, 20): right of one who looks ahead comes first; by 3-4-5 on the slant."""
    right, left = right or (10 + 1.8 + 1.6, 20 + 2.4 - 1.2), left or (10 + 1.8 - 1.6, 20 + 2.4 + 1.2)
    assert jambs((10, 20), heading, 4, 3) == (pytest.approx(right), pytest.approx(left))


def test_box_along():
    """Behind and ahead: 4 ft across, from 1 ft behind to 5 ft ahead, up the page and on the slant."""
    assert box_along((10, 20), (0, 1), 4, -1, 5).bounds == (8, 19, 12, 25)
    slant = box_along((10, 20), (0.6, 0.8), 4, -1, 5)
    assert slant.area == pytest.approx(24)
    assert slant.exterior.coords[0] == pytest.approx((10 - 0.6 + 1.6, 20 - 0.8 - 1.2))
