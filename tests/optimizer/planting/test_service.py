"""No bed stands before a meter, a tap or an outlet."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, box, union_all

from optimizer.brief import Relation
from optimizer.layout import Layout, placed_of
from optimizer.planting import at_services, planting_of
from optimizer.site import Building, Utility
from tests.yards import PLAIN_SITE, plain_layout, plain_rooms, stand

HOUSE = Building("house", ((10, 0), (50, 0), (50, 12), (10, 12)))
YARD = replace(
    PLAIN_SITE, buildings=(HOUSE,), entrances=(), structures=(), trees=(), keep_outs=(), utilities=(), levels=()
)


def beds(site, layout=None, relations=()):
    """All beds of a yard as one shape."""
    found = planting_of(site, relations, placed_of(plain_rooms(), layout or Layout(())), Polygon())
    return union_all([bed.outline for bed in found.beds])


@pytest.mark.parametrize("kind", ["gas", "electric", "water", "drain"])
def test_a_bed_along_the_house_stops_at_a_service_point(kind):
    """Before a meter on the garden wall 36 in of depth and 30 in of width are no bed, and open out to the lawn."""
    working_space = box(30 - 15 / 12, 12, 30 + 15 / 12, 12 + 3)
    site = replace(YARD, utilities=(Utility(kind, (30, 12)),))
    assert beds(YARD).contains(working_space)
    assert beds(site).intersection(working_space).area == pytest.approx(0)
    assert beds(YARD).area - beds(site).area == pytest.approx(3 * 3.5)
    left = planting_of(site, (), placed_of(plain_rooms(), Layout(())), Polygon())
    assert left.left.area == pytest.approx(3 * 3.5)
    assert left.left.distance(union_all(left.lawns)) == pytest.approx(0)
    assert left.unused.is_empty


def test_a_screen_leaves_an_outfall_open():
    """A bed along the boundary that hides a room is broken before a drain, over its whole depth of 6 ft."""
    relations, layout = (Relation(("nook", "rear eye"), "out_of_view"),), Layout((stand("nook", 26, 20, 8, 7),))
    front = box(28.5, 34, 31.5, 40)
    site = replace(YARD, utilities=(Utility("drain", (30, 40)),))
    assert beds(YARD, layout, relations).contains(front)
    assert beds(site, layout, relations).intersection(front).area == pytest.approx(0)


def test_a_point_that_stands_free_is_open_all_round():
    """A post with a tap in the middle of a gap between two rooms has 3 ft on each side."""
    layout = Layout((stand("fire", 20, 26, 8, 8), stand("nook", 34, 26, 8, 8)))
    site = replace(YARD, utilities=(Utility("water", (31, 30)),))
    assert beds(YARD, layout).contains(box(28.1, 27, 33.9, 33))
    assert at_services(site).equals(box(28, 27, 34, 33))
    assert beds(site, layout).intersection(Point(31, 30).buffer(3)).area == pytest.approx(0)


def test_a_point_at_a_slanted_wall_is_open_square_to_it():
    """The ground before a meter lies along the wall's normal."""
    slanted = Building("house", ((10, 0), (50, 0), (50, 12), (10, 32)))
    out = (20 / 2000**0.5, 40 / 2000**0.5)
    found = at_services(replace(YARD, buildings=(slanted,), utilities=(Utility("electric", (30, 22)),)))
    assert found.buffer(1e-6).contains(
        LineString([(30, 22), (30 + 3 * out[0], 22 + 3 * out[1])]).buffer(1.25, cap_style="flat")
    )
    assert found.area == pytest.approx(3 * 7)


@given(st.sampled_from(["gas", "electric", "water", "drain"]), st.floats(10, 50), st.booleans())
def test_no_bed_before_any_point_of_a_wall(kind, along, is_on_wall):
    """Wherever a point is along the garden wall, or hangs half a foot off it, its 3 ft in front bear no bed."""
    site = replace(YARD, utilities=(Utility(kind, (along, 12.0 if is_on_wall else 12.5)),))
    front = box(along - 1.5, 12, along + 1.5, 15.5)
    assert beds(site, plain_layout()).intersection(front).area == pytest.approx(0, abs=1e-6)
