"""Ground that ways pave: strips, corners, and what they join."""

from dataclasses import replace

import pytest
from shapely import Point, box

from optimizer.circulation import Leg, way_polygon
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, KeepOut
from tests.yards import PLAIN_SITE, plain_rooms, stand

BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=())
TABLE = stand("table", 24, 16, 14, 12)


def leg(*points, width=4.0):
    return Leg(points, width, "main", (("gate", "table"),))


def paved(*legs, site=BARE, layout=None):
    return way_polygon(site, placed_of(plain_rooms(), layout or Layout((TABLE,))), legs)


@pytest.mark.parametrize(("apart", "wide"), [(2, 2), (3, 0), (6, 0)])
def test_a_way_joins_the_terrace_that_it_runs_along(apart, wide):
    """What lies between is paved up to 3 ft; at 3 ft there is room for a bed."""
    middle = 28 + apart + 2
    ground = paved(leg((20, middle), (42, middle)))
    assert ground.area == pytest.approx(22 * 4 + 14 * wide)


def test_ground_between_two_ways_is_paved():
    """Ways that run side by side are one."""
    assert paved(leg((2, 4), (20, 4)), leg((2, 9.5), (20, 9.5))).area == pytest.approx(18 * 9.5)


def test_a_large_piece_stays_ground_of_its_own():
    """More than 60 sq ft between two ways is no gap."""
    assert paved(leg((2, 4), (42, 4)), leg((2, 9.5), (42, 9.5))).area == pytest.approx(40 * 8)


def test_no_gap_is_paved_where_no_path_may_be():
    """Ground that is kept out, and what lies over the boundary, stay as they are."""
    kept = replace(BARE, keep_outs=(KeepOut("well", ((24, 28), (38, 28), (38, 30), (24, 30)), allow=("lawn",)),))
    assert paved(leg((20, 32), (42, 32)), site=kept).area == pytest.approx(22 * 4)
    notched = replace(BARE, boundary=((0, 0), (60, 0), (60, 28), (30, 28), (30, 30), (60, 30), (60, 40), (0, 40)))
    assert paved(leg((20, 32), (42, 32)), site=notched).area == pytest.approx(22 * 4 + 6 * 2)


def test_a_landing_is_built_up_to_what_stands_before_it():
    """Half a foot between a landing and a room beside it is paved; two feet are not."""
    assert paved(site=PLAIN_SITE, layout=Layout((stand("nook", 23, 12, 8, 7),))).area == pytest.approx(
        0.5 * (4 + 14 / 12)
    )
    assert paved(site=PLAIN_SITE, layout=Layout((stand("nook", 24.5, 12, 8, 7),))).is_empty


def test_a_terrace_is_paved_up_to_the_wall_that_it_runs_along():
    """Half a foot between a wall and a terrace is paved; two feet are not, and up to a nook nothing is."""
    site = replace(BARE, buildings=(Building("shed", ((20, 0), (40, 0), (40, 10), (20, 10))),))
    assert paved(site=site, layout=Layout((stand("table", 24, 10.5, 14, 12),))).area == pytest.approx(0.5 * 14)
    assert paved(site=site, layout=Layout((stand("table", 24, 12, 14, 12),))).is_empty
    assert paved(site=site, layout=Layout((stand("nook", 24, 10.5, 8, 7),))).is_empty


def test_legs_that_meet_square_have_a_square_corner():
    """Two legs at a right angle look as one way that bends."""
    corner = paved(leg((2, 4), (12, 4)), leg((12, 4), (12, 14)))
    assert corner.equals(paved(leg((2, 4), (12, 4), (12, 14))))
    assert corner.covers(Point(13.9, 2.1))


def test_before_a_door_the_strip_at_the_house_is_paved():
    """The door and 3 ft to each side, from the wall to the terrace; the rest is long enough for a bed."""
    top = 12 + 4 + 14 / 12
    ground = paved(site=PLAIN_SITE, layout=Layout((stand("table", 12, top, 26, 12),)))
    landing = box(17.5, 12, 22.5, top)
    assert ground.equals(box(12, 12, 24.5, top).difference(landing)), "left of it no 6 ft are left"
