"""Volume of pools against a published table of gallons: length x width x mean depth x 7.5.

Source: a home magazine's page on average sizes of pools, seen: 12 x 24 x 5 ft 10,800 gal, 16 x 32 x 5 ft
19,200 gal, 20 x 40 x 5 ft 30,000 gal.
"""

import pytest

from optimizer.catalogue import pool_gallons


@pytest.mark.parametrize(("width_ft", "length_ft", "gallons"), [(12, 24, 10_800), (16, 32, 19_200), (20, 40, 30_000)])
def test_published_volumes(width_ft: float, length_ft: float, gallons: float) -> None:
    """Within the half per cent that the table is good for."""
    assert pool_gallons(length_ft, width_ft, 5.0) == pytest.approx(gallons, rel=0.005)
