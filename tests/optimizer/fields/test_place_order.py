"""What a place alone does to the order of a plan."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.fields import across_contour_ft, off_axis, off_structure_ft
from optimizer.site import SpotLevel
from tests.yards import PLAIN_SITE

ROOF = PLAIN_SITE.structures[0]  # from (44, 30) to (54, 38), may hold the table
BARE = replace(PLAIN_SITE, trees=(), structures=())
LEVELS = tuple(SpotLevel((x, y), -0.1 * y) for x in (0, 60) for y in (0, 40))


def off_roof(x, y, width, depth, room="table"):
    return float(off_structure_ft(PLAIN_SITE, room, np.array(x), np.array(y), width_ft=width, depth_ft=depth))


@pytest.mark.parametrize(
    ("place", "off"),
    [
        ((46.0, 31.0, 6.0, 6.0), 0.0),  # centred in both
        ((44.0, 30.0, 6.0, 6.0), 0.0),  # flush on two edges
        ((42.0, 28.0, 14.0, 12.0), 0.0),  # larger, and centred
        ((45.0, 31.0, 6.0, 6.0), 1.0),  # one foot off the middle and off the edge
        ((40.0, 31.0, 6.0, 6.0), 4.0 + 4.0),  # sticks out by four feet, and its edges are four from the roof's
        ((20.0, 16.0, 14.0, 12.0), 0.0),  # not under it
    ],
)
def test_a_room_under_a_roof_keeps_its_lines(place, off):
    """Under a structure a room lies within it or round it, centred or flush; layout rule 23, common practice."""
    assert off_roof(*place) == pytest.approx(off)


def test_only_rooms_that_a_roof_may_hold():
    """A room that the structure may not hold is another rule's business."""
    assert off_roof(40.0, 31.0, 6.0, 6.0, room="nook") == 0


def test_a_fire_on_the_axis_of_the_door():
    """The widest door is at x = 20, the widest window at x = 40: a middle within 1 ft of either line is on an axis."""
    found = off_axis(BARE, np.array([16.0, 16.9, 17.1, 36.0, 27.0]), np.full(5, 25.0), width_ft=8.0, depth_ft=8.0)
    assert found.tolist() == [False, False, True, False, True]


def test_a_tree_on_the_axis_is_enough():
    """Where a kept tree stands on an axis, no room is asked to."""
    on_line = replace(PLAIN_SITE.trees[0], at=(20.5, 34))
    site = replace(BARE, trees=(on_line,))
    assert not off_axis(site, np.array([30.0]), np.array([25.0]), width_ft=8.0, depth_ft=8.0).any()


def test_the_long_side_lies_along_the_contour():
    """On a slope of 10 % along y, a room of 8 by 20 ft rises 2 ft more along its long side if that runs uphill."""
    site = replace(PLAIN_SITE, levels=LEVELS)
    at = (np.array(20.0), np.array(15.0))
    assert float(across_contour_ft(site, *at, width_ft=8.0, depth_ft=20.0)) == pytest.approx(2.0)
    assert float(across_contour_ft(site, *at, width_ft=20.0, depth_ft=8.0)) == 0
    assert float(across_contour_ft(PLAIN_SITE, *at, width_ft=8.0, depth_ft=20.0)) == 0


def test_gentle_ground_asks_for_nothing():
    """Up to 4 % a room may lie as it likes."""
    gentle = tuple(replace(level, z_ft=level.z_ft * 0.39) for level in LEVELS)
    site = replace(PLAIN_SITE, levels=gentle)
    assert float(across_contour_ft(site, np.array(20.0), np.array(15.0), width_ft=8.0, depth_ft=20.0)) == 0
