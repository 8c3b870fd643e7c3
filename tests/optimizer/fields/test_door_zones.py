"""The landing and steps in front of doors."""

from dataclasses import replace

import pytest

from optimizer.fields import door_zone, risers
from optimizer.site import SpotLevel
from tests.yards import PLAIN_SITE

HOUSE = PLAIN_SITE.buildings[0]
DOOR = HOUSE.doors[0]


def test_a_door_two_risers_up():
    """A floor 12 in up takes two risers of at most 7 in, so one tread of 14 in beyond the 4 ft landing."""
    assert door_zone(PLAIN_SITE, HOUSE, DOOR).bounds == pytest.approx((17.5, 12, 22.5, 12 + 4 + 14 / 12))


@pytest.mark.parametrize(
    ("floor_z_ft", "count"),
    [(None, 0), (-1.0, 0), (0.0, 0), (1.5 / 12, 0), (0.13, 2), (7 / 12, 2), (1.17, 3), (3 * 7 / 12, 3), (5.0, 9)],
)
def test_risers(floor_z_ft, count):
    """Risers are as many as it takes at 7 in, never one; none up to a flush sill, or where no floor is known."""
    assert risers(PLAIN_SITE, replace(HOUSE, floor_z_ft=floor_z_ft), DOOR) == count


def test_the_ground_at_the_door_counts():
    """On ground 1 ft below the datum the same floor is twice as high."""
    low = replace(PLAIN_SITE, levels=(SpotLevel((20, 12), -1.0),))
    assert risers(low, HOUSE, DOOR) == 4


@pytest.mark.parametrize(
    ("outward", "bounds"),
    [((1, 0), (20, 9.5, 24, 14.5)), ((-1, 0), (16, 9.5, 20, 14.5)), ((0, -1), (17.5, 8, 22.5, 12))],
)
def test_the_zone_lies_outward(outward, bounds):
    """The zone lies in front of the door whichever way it looks."""
    zone = door_zone(PLAIN_SITE, replace(HOUSE, floor_z_ft=0.0), replace(DOOR, outward=outward))
    assert zone.bounds == pytest.approx(bounds)


def test_a_slanted_wall():
    """In a slanted wall the zone keeps its size."""
    slanted = replace(DOOR, outward=(0.6, 0.8))
    zone = door_zone(PLAIN_SITE, replace(HOUSE, floor_z_ft=0.0), slanted)
    assert zone.area == pytest.approx(5 * 4)
    assert (zone.centroid.x, zone.centroid.y) == pytest.approx((20 + 0.6 * 2, 12 + 0.8 * 2))
