"""Height of the ground between spot levels."""

import numpy as np
import pytest

from optimizer.fields import ground_of, ground_z_ft
from optimizer.layout.pose import SYMMETRIES, turned
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


def test_one_level():
    """One level is flat ground."""
    assert ground_z_ft(site(PLANE[1]), [(2, 9), (90, 90)]).tolist() == [7.0, 7.0]


LINE = (*PLANE[:2], SpotLevel((30, 0), 2.0))


def test_levels_on_one_line():
    """Levels on one line are linear along it, the same across it, and hold beyond its ends."""
    assert ground_z_ft(site(*LINE), [(15, 9), (45, -9), (90, 3), (-5, 0)]) == pytest.approx([1.5, 4.5, 7.0, 1.0])


def test_a_slanted_line():
    """The same for a line that lies along no axis."""
    levels = (SpotLevel((0, 0), 0.0), SpotLevel((30, 40), 5.0))
    assert ground_z_ft(site(*levels), [(6, 8), (6 - 8, 8 + 6)]) == pytest.approx([1.0, 1.0])


def test_outside_the_levels():
    """Beyond the outermost levels the nearest point of their hull holds, on an edge as well as at a corner."""
    assert ground_z_ft(site(*PLANE), [(90, -5), (20, -8)]) == pytest.approx([7.0, 3.0])


@pytest.mark.parametrize("levels", [(), PLANE[:1], LINE, PLANE])
def test_what_is_known(levels):
    """Ground is known where any level is; the levels cover their hull, its edge included."""
    ground = ground_of(site(*levels))
    assert ground.is_known == bool(levels)
    assert ground.covers([(30, 20), (60, 0), (61, 0)]).tolist() == [
        len(levels) == 4,
        len(levels) > 2,
        False,
    ]


def test_slope():
    """A plane's slope is that of its steepest line: rises of 0.1 and 0.2 are 0.2236 together."""
    assert ground_of(site(*PLANE)).slope([(30, 20), (7, 11)]) == pytest.approx([0.05**0.5] * 2)
    assert ground_of(site(*LINE)).slope([(45, 3)]) == pytest.approx([5 / 30])


def test_two_levels_at_one_point():
    """A level given twice does no harm."""
    assert ground_z_ft(site(*PLANE, PLANE[2]), [(12, 31)]) == pytest.approx([1 + 1.2 - 6.2])


def test_far_from_the_origin():
    """Coordinates of a survey, far from the origin, lose no hundredth of an inch."""
    far = tuple(SpotLevel((level.at[0] + 2e6, level.at[1] + 7e5), level.z_ft) for level in PLANE)
    assert ground_z_ft(site(*far), [(2e6 + 12, 7e5 + 31)]) == pytest.approx([1 + 1.2 - 6.2], abs=1e-3)


def test_no_points():
    """No points asked are no heights, not an error."""
    assert np.size(ground_z_ft(site(*PLANE), [])) == 0


GRID = tuple(
    SpotLevel((20.0 * x, 20.0 * y), z)
    for y, row in enumerate(((0, 3, 1), (2, 0, 4), (5, 1, 2)))
    for x, z in enumerate(row)
)
"""A survey grid: every four neighbours lie on one circle."""


@pytest.mark.parametrize("matrix", SYMMETRIES)
@pytest.mark.parametrize("turned_deg", [0.0, 17.0])
def test_a_survey_grid_has_one_ground(matrix, turned_deg):
    """Turned, mirrored and in another order, a grid of levels spans the same ground, the highest between each four."""
    spin = np.exp(1j * np.radians(turned_deg))

    def moved(at):
        x, y = turned(matrix, at)
        place = complex(x, y) * spin
        return (place.real + 7.3, place.imag - 4.1)

    asked = [(x, y) for x in (3.0, 13.0, 27.0, 38.0) for y in (2.0, 16.0, 22.0, 33.0)]
    levels = tuple(SpotLevel(moved(level.at), level.z_ft) for level in GRID)[::-1]
    found = ground_z_ft(site(*levels), [moved(at) for at in asked])
    assert found == pytest.approx(ground_z_ft(site(*GRID), asked), abs=1e-6)
    middles = [moved(at) for at in ((10, 10), (30, 10), (10, 30), (30, 30))]
    assert ground_z_ft(site(*levels), middles) == pytest.approx([2.5, 3.5, 2.5, 2.5], abs=1e-6)


def test_eight_levels_on_one_circle():
    """A peak and seven lower levels round a pond: whatever triangles are made, the same ground."""
    angles = np.radians(np.arange(8) * 45)
    levels = tuple(
        SpotLevel((30 + 10 * np.cos(a), 20 + 10 * np.sin(a)), z)
        for a, z in zip(angles, (8, 0, 1, 0, 2, 0, 1, 0), strict=True)
    )
    assert ground_z_ft(site(*levels), [(30, 20), (35, 20)]) == pytest.approx([5.0, 6.5])
    assert ground_z_ft(site(*levels[3:], *levels[:3]), [(33, 24)]) == pytest.approx(
        ground_z_ft(site(*levels), [(33, 24)])
    )
