"""Height of the ground between spot levels."""

import numpy as np
import pytest

from optimizer.fields import ground_z_ft
from optimizer.site import SpotLevel
from tests.yards import on_site, plain_yard

PLANE = tuple(SpotLevel((x, y), 1 + 0.1 * x - 0.2 * y) for x, y in ((0, 0), (60, 0), (60, 40), (0, 40)))


def site(*levels: SpotLevel):
    return on_site(plain_yard(), levels=levels).site


def test_a_plane_is_met_everywhere():
    """Levels that lie on a plane give that plane between them."""
    found = ground_z_ft(site(*PLANE), [(0, 0), (30, 20), (12, 31)])
    assert found == pytest.approx([1.0, 0.0, 1 + 1.2 - 6.2])


def test_no_levels():
    """Ground without levels lies at the datum."""
    assert ground_z_ft(site(), [(3, 4), (5, 6)]).tolist() == [0.0, 0.0]


@pytest.mark.parametrize("levels", [PLANE[:1], PLANE[:2], (*PLANE[:2], SpotLevel((30, 0), 4.0))])
def test_levels_on_one_line(levels):
    """Levels that span no triangle give the nearest of them."""
    assert ground_z_ft(site(*levels), [(2, 9)]) == pytest.approx([1.0])


def test_outside_the_levels():
    """Beyond the outermost levels the nearest one holds."""
    assert ground_z_ft(site(*PLANE), [(90, -5)]) == pytest.approx([7.0])


def test_no_points():
    """No points asked are no heights, not an error."""
    assert np.size(ground_z_ft(site(*PLANE), [])) == 0
