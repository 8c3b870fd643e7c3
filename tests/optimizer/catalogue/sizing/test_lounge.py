"""Sofas about low tables."""

import pytest

from optimizer.catalogue.sizing.frame import seats_of
from optimizer.catalogue.sizing.lounge import group_width_ft, lounge


def test_a_group_is_about_ten_feet_wide() -> None:
    """Two sofas of 33 in, two gaps of 15 in and a table of 24 in make 10 ft."""
    assert group_width_ft() == pytest.approx((2 * 33 + 2 * 15 + 24) / 12)


@pytest.mark.parametrize(("width", "seats"), [(9.9, 0), (12, 6), (23, 6), (24, 12)])
def test_groups_fill_the_width(width: float, seats: int) -> None:
    """Groups of six stand side by side as far as the width holds them with a walkway of 3 ft between."""
    assert seats_of(lounge(width_ft=width, depth_ft=8.0, seats=20)) == seats


def test_no_more_seats_than_people() -> None:
    """Two people get one sofa."""
    items = lounge(width_ft=12, depth_ft=8, seats=2)
    assert [item.role for item in items].count("sofa") == 1
    assert seats_of(items) == 2
