"""Strips between a wall and the terrace before its door: layout rule 24, common practice, no source."""

from dataclasses import replace

import pytest
from shapely import Polygon, box

from optimizer.fields.house_strips import house_strips
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Door
from tests.yards import PLAIN_SITE, plain_rooms, stand

TOP = 12 + 4 + 14 / 12
"""Where the landing and steps of the kitchen door end, whose middle is at x = 20."""


def strips(*placements, site=PLAIN_SITE):
    return house_strips(site, placed_of(plain_rooms(), Layout(placements)))


def test_from_the_wall_to_the_terrace():
    """As long as the terrace; before the door and 3 ft to each side it is paved, the rest is a bed."""
    (strip,) = strips(stand("table", 10, TOP, 30, 12))
    assert strip.ground.equals(box(10, 12, 40, TOP))
    assert strip.before_doors.equals(box(15.5, 12, 24.5, TOP))
    assert strip.beds(Polygon()).bounds == pytest.approx((24.5, 12, 40, TOP))


@pytest.mark.parametrize(("right", "is_bed"), [(30.5, True), (30, False)])
def test_a_bed_is_at_least_6_ft_long(right, is_bed):
    """From 3 ft beside the door on."""
    (strip,) = strips(stand("table", 16, TOP, right - 16, 12))
    assert strip.beds(Polygon()).is_empty is not is_bed


def test_what_a_way_leaves_narrow_is_no_bed():
    """A way along the wall leaves 2 ft of the strip."""
    (strip,) = strips(stand("table", 16, TOP, 24, 12))
    assert strip.beds(box(24, 12, 60, TOP - 2)).is_empty


@pytest.mark.parametrize(
    "placement",
    [
        stand("table", 16, TOP + 1.1, 24, 12),
        stand("table", 22.5, TOP, 24, 12),
        stand("table", 22.5, 12, 24, 12),
        stand("nook", 16, TOP, 8, 7),
    ],
)
def test_only_a_terrace_before_the_landing_has_a_strip(placement):
    """None a step farther, past the landing, beside it, or for a nook."""
    assert strips(placement) == ()


def test_walls_of_every_side():
    """On each side of a house the strip lies between wall and terrace."""
    for out, at, terrace, bounds in (
        ((1, 0), (50, 6), (54, 0, 12, 12), (50, 0, 54, 12)),
        ((-1, 0), (10, 6), (-6, 0, 12, 12), (6, 0, 10, 12)),
        ((0, -1), (20, 0), (10, -16, 12, 12), (10, -4, 22, 0)),
    ):
        house = Building("house", PLAIN_SITE.buildings[0].outline, 20, doors=(Door("door", at, 3, out),))
        (strip,) = strips(stand("table", *terrace), site=replace(PLAIN_SITE, buildings=(house,)))
        assert strip.ground.bounds == pytest.approx(bounds)


def test_a_wall_that_steps_back_ends_the_strip():
    """Ground that the house takes, and what lies behind it, is not part of the strip."""
    wing = Building("wing", ((25, 12), (30, 12), (30, 20), (25, 20)), 20)
    site = replace(PLAIN_SITE, buildings=(*PLAIN_SITE.buildings, wing))
    (strip,) = strips(stand("table", 10, TOP, 30, 12), site=site)
    assert strip.ground.bounds == pytest.approx((10, 12, 25, TOP))


def test_a_door_in_a_bay_is_no_door_of_the_strip():
    """Its wall lies along no axis; what is paved is before the other door alone."""
    slanted = Door("bay door", (41, 11), 3, (0.7071, 0.7071))
    house = PLAIN_SITE.buildings[0]
    house = replace(house, doors=(*house.doors, slanted))
    (strip,) = strips(stand("table", 10, TOP, 30, 12), site=replace(PLAIN_SITE, buildings=(house,)))
    assert strip.before_doors.equals(box(15.5, 12, 24.5, TOP))


def test_a_door_in_a_wing_is_no_door_of_the_strip():
    """A wing at the strip's end has its own wall."""
    wing = Door("wing door", (8, 14), 3, (1, 0))
    house = replace(
        PLAIN_SITE.buildings[0],
        outline=((2, 0), (50, 0), (50, 12), (8, 12), (8, 20), (2, 20)),
        doors=(*PLAIN_SITE.buildings[0].doors, wing),
    )
    found = strips(stand("table", 10, TOP, 30, 12), site=replace(PLAIN_SITE, buildings=(house,)))
    assert any(strip.before_doors.equals(box(15.5, 12, 24.5, TOP)) for strip in found)
