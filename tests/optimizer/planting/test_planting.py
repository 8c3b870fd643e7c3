"""Beds and lawn that a layout leaves room for, on yards with areas known by hand."""

import math
from dataclasses import replace

import pytest
from shapely import GeometryCollection, LineString, Point, Polygon, box, union_all

from optimizer.brief import Relation
from optimizer.catalogue import demo_price_book
from optimizer.fields import door_zone, open_yard
from optimizer.layout import Layout, placed_of
from optimizer.planting import planting_measures, planting_of
from optimizer.planting.rectangle import largest_rectangle
from optimizer.site import Building, Entrance, KeepOut, SpotLevel
from tests.yards import PLAIN_SITE, plain_layout, plain_rooms, sized, stand

NOTHING = Polygon()
BARE = replace(PLAIN_SITE, buildings=(), entrances=(), structures=(), trees=(), keep_outs=())


def planted(site=BARE, layout=None, rooms=None, relations=(), paths=NOTHING):
    return planting_of(site, relations, placed_of(rooms or plain_rooms(), layout or Layout(())), paths)


def area_of(planting, reason):
    return sum(bed.outline.area for bed in planting.beds if bed.reason == reason)


def test_an_empty_yard_is_one_lawn():
    """With nothing on it a yard of 60 by 40 ft is lawn and nothing else."""
    found = planted()
    assert [lawn.area for lawn in found.lawns] == [pytest.approx(2400)]
    assert found.beds == ()
    assert found.unused.is_empty


def test_a_strip_that_is_a_line_in_part(monkeypatch):
    """As where a strip only touches the boundary's: without trees nothing of it is among roots."""
    strip = GeometryCollection([box(0, 0, 6, 30), LineString([(6, 30), (6, 40)])])
    monkeypatch.setattr("optimizer.planting.plan.screens", lambda *_: strip)
    assert area_of(planted(), "as a screen") == pytest.approx(180)


def test_a_bed_along_the_house():
    """Round a house of 40 by 12 ft at the street lies a bed of 3.5 ft, but for the landing in front of its door."""
    house = replace(PLAIN_SITE.buildings[0], floor_z_ft=None)
    site = replace(BARE, buildings=(house,))
    landing = 5 * 4  # a door of 3 ft with 1 ft on each side, 4 ft deep; 3.5 ft of it lie in the strip
    assert area_of(planted(site), "along the house") == pytest.approx(2 * 3.5 * 15.5 + 40 * 3.5 - landing * 3.5 / 4)


def test_the_strip_at_a_terrace_is_a_bed():
    """Between a wall and the terrace before its door all is planted, however deep, and no lawn is left there."""
    house = replace(PLAIN_SITE.buildings[0], floor_z_ft=2.5)
    top = 12 + 4 + 4 * 14 / 12
    found = planted(replace(BARE, buildings=(house,)), Layout((stand("table", 10, top, 40, 12),)))
    strip = box(22.5, 12, 50, top)
    assert union_all([bed.outline for bed in found.beds if bed.reason == "along the house"]).covers(strip)
    assert all(not lawn.intersects(strip.buffer(-0.1)) for lawn in found.lawns)


def test_a_gap_between_rooms_is_planted():
    """Two rooms of 8 ft that face each other over 4 ft have a bed of 32 sq ft between; over 10 ft they have none."""
    near = Layout((stand("fire", 10, 10, 8, 8), stand("nook", 22, 10, 8, 8)))
    far = Layout((stand("fire", 10, 10, 8, 8), stand("nook", 28, 10, 8, 8)))
    assert area_of(planted(layout=near), "between rooms") == pytest.approx(32)
    assert area_of(planted(layout=far), "between rooms") == 0


def test_narrow_ground_is_planted():
    """Three feet beside a room are no lawn; five are."""
    assert area_of(planted(layout=Layout((stand("fire", 3, 0, 8, 40),))), "narrow ground") == pytest.approx(120)
    assert area_of(planted(layout=Layout((stand("fire", 5, 0, 8, 40),))), "narrow ground") == 0


def test_small_pieces_of_lawn_are_planted():
    """Ground of 8 by 8 ft between two rooms and the boundary is planted; 8 by 12 ft is lawn."""
    small = Layout((stand("fire", 8, 0, 8, 40), stand("nook", 0, 8, 8, 32)))
    large = Layout((stand("fire", 8, 0, 8, 40), stand("nook", 0, 12, 8, 28)))
    assert area_of(planted(layout=small), "narrow ground") == pytest.approx(64)
    assert area_of(planted(layout=large), "narrow ground") == 0


def test_a_scrap_joins_the_bed_that_it_lies_along():
    """Behind a bed of 3.5 ft along the house 3 ft before a room are part of that bed, and not left over."""
    house = Building("house", ((0, 0), (60, 0), (60, 12), (0, 12)))
    found = planted(replace(BARE, buildings=(house,)), Layout((stand("nook", 0, 18.5, 60, 8),)))
    assert area_of(found, "along the house") == pytest.approx(60 * 6.5)
    assert area_of(found, "narrow ground") == 0
    assert [bed.reason for bed in found.beds] == ["along the house"]


def test_a_scrap_across_the_end_of_a_bed_stays_narrow_ground():
    """A strip of 3 by 30 ft meets the house's bed with its short side only; it is a piece of its own."""
    house = Building("house", ((0, 0), (60, 0), (60, 6.5), (0, 6.5)))
    found = planted(replace(BARE, buildings=(house,)), Layout((stand("nook", 3, 10, 10, 30),)))
    assert area_of(found, "narrow ground") == pytest.approx(90)


@pytest.mark.parametrize(("diameter", "radius"), [(0.1, 2), (0.5, 3), (2, 5)])
def test_mulch_round_a_trunk(diameter, radius):
    """The inner root ring of six trunk diameters is mulched, at least 2 ft and at most 5 ft round the trunk."""
    site = replace(BARE, trees=(replace(PLAIN_SITE.trees[0], at=(30, 20), trunk_diameter_ft=diameter),))
    (ring,) = (bed.outline for bed in planted(site).beds)
    assert ring.bounds == pytest.approx((30 - radius, 20 - radius, 30 + radius, 20 + radius))
    assert math.pi * radius**2 <= ring.area <= 1.02 * math.pi * radius**2


def test_no_bed_is_dug_among_roots():
    """A bed along a house is mulch where it lies in the inner root ring, here 12 ft round a trunk of 2 ft."""
    house = Building("house", ((0, 0), (60, 0), (60, 12), (0, 12)))
    tree = replace(PLAIN_SITE.trees[0], at=(30, 22), trunk_diameter_ft=2)
    found = planted(replace(BARE, buildings=(house,), trees=(tree,)))
    dug = union_all([bed.outline for bed in found.beds if bed.reason == "along the house"])
    assert dug.distance(Point(tree.at)) == pytest.approx(12, abs=0.01)
    assert area_of(found, "along the house") == pytest.approx(
        60 * 3.5 - Point(tree.at).buffer(12).intersection(box(0, 12, 60, 15.5)).area, abs=2
    )


def test_no_bed_closes_an_entrance():
    """A screen along the boundary stops at a gate: 5 ft wide and 10 ft deep remain lawn."""
    gate = Entrance("rear gate", (30, 40), 5, (0, -1))
    relations = (Relation(("nook", "rear eye"), "out_of_view"),)
    layout = Layout((stand("nook", 26, 20, 8, 7),))
    front = box(27.5, 30, 32.5, 40)
    shut, opened = (planted(replace(BARE, entrances=e), layout, relations=relations) for e in ((), (gate,)))
    assert union_all([bed.outline for bed in shut.beds]).intersection(front).area > 10
    assert union_all([bed.outline for bed in opened.beds]).intersection(front).area == pytest.approx(0)
    assert union_all(opened.lawns).intersection(front).area == pytest.approx(50)


def test_a_narrow_gate_is_left_open():
    """In front of a gate narrower than a mower's turn, between rooms, the ground is left, and is no leftover."""
    gate = Entrance("side gate", (0, 20), 3, (1, 0))
    layout = Layout((stand("fire", 0, 21.5, 20, 18.5), stand("nook", 0, 0, 20, 18.5)))
    found = planted(replace(BARE, entrances=(gate,)), layout)
    assert found.left.area == pytest.approx(3 * 10)
    assert found.unused.is_empty
    assert area_of(found, "narrow ground") + area_of(found, "between rooms") == pytest.approx(3 * 10)


def test_a_screen_towards_who_must_not_see():
    """Where a room is to be out of an outside eye's view the boundary between the two is planted 6 ft deep."""
    layout = Layout((stand("nook", 26, 20, 8, 7),))
    found = planted(layout=layout, relations=(Relation(("nook", "rear eye"), "out_of_view"),))
    beds = union_all([bed.outline for bed in found.beds if bed.reason == "as a screen"])
    assert beds.bounds[1] == pytest.approx(34)
    assert beds.bounds[3] == pytest.approx(40)
    assert beds.bounds[0] < 30 < beds.bounds[2]


def test_beds_round_later_water():
    """Ground kept for water has 3 ft of bed on every side that is open."""
    rooms = (*plain_rooms(), sized("water", "reserve", 10, 10))
    layout = Layout((stand("water", 20, 20, 10, 10),))
    assert area_of(planted(layout=layout, rooms=rooms), "round the water") == pytest.approx(16 * 16 - 100)


def test_kept_out_ground_is_neither():
    """Ground that allows neither lawn nor beds is left without a use; one that allows lawn is lawn."""
    strip = ((0, 0), (60, 0), (60, 10), (0, 10))
    closed = planted(replace(BARE, keep_outs=(KeepOut("strip", strip),)))
    mown = planted(replace(BARE, keep_outs=(KeepOut("strip", strip, allow=("lawn",)),)))
    assert closed.unused.area == pytest.approx(600)
    assert mown.unused.is_empty
    assert sum(lawn.area for lawn in mown.lawns) == pytest.approx(2400)


def test_a_bank_is_left_as_it_is():
    """Wide ground that may be planted and not mown is left, has a name, and is neither a bed nor left over."""
    strip = ((0, 0), (60, 0), (60, 10), (0, 10))
    found = planted(replace(BARE, keep_outs=(KeepOut("bank", strip, allow=("bed",)),)))
    assert found.left.area == found.bank.area == pytest.approx(600)
    assert found.beds == ()
    assert found.unused.is_empty


def test_ground_too_steep_to_mow_is_a_bank():
    """Spot levels that rise 1 ft in 2 over the lower 10 ft and nothing beyond: just that strip is bank, and no lawn."""
    heights = {0: 0, 10: 5, 40: 5}
    levels = tuple(SpotLevel((x, y), z) for x in (0, 60) for y, z in heights.items())
    found = planted(replace(BARE, levels=levels))
    assert found.bank.bounds == pytest.approx((0, 0, 60, 10))
    assert found.bank.area == pytest.approx(600)
    assert sum(lawn.area for lawn in found.lawns) == pytest.approx(1800)
    gentle = tuple(replace(level, z_ft=level.z_ft / 2) for level in levels)
    assert planted(replace(BARE, levels=gentle)).bank.is_empty


@pytest.mark.parametrize("without", [(), ("fire",), ("table", "cooker"), ("nook", "fire")])
def test_everything_is_one_thing(without):
    """Beds, lawns and unused ground cover what rooms, ways and landings leave, and nothing twice."""
    layout, paths = plain_layout(without=without), box(0, 18.5, 24, 21.5)
    found = planted(PLAIN_SITE, layout, paths=paths)
    parts = [*found.lawns, *(bed.outline for bed in found.beds), found.left, found.unused]
    house = PLAIN_SITE.buildings[0]
    taken = [paths, door_zone(PLAIN_SITE, house, house.doors[0])]
    taken += [box(p.x_ft, p.y_ft, p.right_ft, p.top_ft) for p in layout.placements]
    free = open_yard(PLAIN_SITE).difference(union_all(taken))
    assert sum(part.area for part in parts) == pytest.approx(free.area, abs=0.1)
    assert union_all(parts).symmetric_difference(free).area == pytest.approx(0, abs=0.1)


def test_the_largest_rectangle_of_a_lawn():
    """Of an L of 20 by 20 ft that lacks its upper right 12 by 8 the largest rectangle is 20 by 12."""
    ell = Polygon([(0, 0), (20, 0), (20, 12), (8, 12), (8, 20), (0, 20)])
    assert largest_rectangle(ell) == (20, 12)
    assert largest_rectangle(box(0, 0, 7, 31)) == (31, 7)
    assert largest_rectangle(box(0.3, 0.7, 10.55, 31.95)) == pytest.approx((31.25, 10.25))


def test_the_largest_rectangle_beside_a_hole_and_a_slant():
    """Of 30 by 20 ft round a hole 6 ft in from the right 20 by 20 remain; a triangle of 20 by 20 ft holds 10 by 10."""
    hollow = box(0, 0, 30, 20).difference(box(20, 8, 24, 12))
    assert largest_rectangle(hollow) == (20, 20)
    long, short = largest_rectangle(Polygon([(0, 0), (20, 0), (0, 20)]))
    assert long * short == pytest.approx(100, abs=10)
    assert long * short <= 100


def test_measures_of_a_planting():
    """Wished lawns count as lawn, and what is left over is measured in square feet and as a share of the open yard."""
    wall = Building("wall", ((0, 0), (60, 0), (60, 20), (0, 20)))
    site = replace(BARE, buildings=(wall,))
    rooms = (*plain_rooms(), sized("grass", "lawn", 20, 10))
    layout = Layout((stand("grass", 0, 30, 20, 10), stand("nook", 23, 30, 37, 10)))
    book = demo_price_book()
    found = planting_measures(site, placed_of(rooms, layout), book, planted(site, layout, rooms))
    assert found.lawn_sqft == pytest.approx(200 + 60 * 6.5)
    assert found.lawn_rectangle_ft == (60, 6.5)
    assert found.lawn_rectangle_share == pytest.approx(390 / 590)
    assert found.scattered_sqft == 0
    paid = book.of("planting of leftovers").price / book.of("planting bed").price
    assert found.paid_sqft == pytest.approx(float(paid), abs=0.01)
    assert dict(found.beds_sqft)["between rooms"] == pytest.approx(30)
    assert found.leftover_sqft == pytest.approx(1200 * (found.unused_share + found.narrow_share), abs=0.01)


def test_lawns_that_meet_are_one():
    """A wished lawn beside derived lawn counts with it as one rectangle: here the whole yard."""
    rooms, layout = (*plain_rooms(), sized("grass", "lawn", 20, 40)), Layout((stand("grass", 10, 0, 20, 40),))
    found = planting_measures(BARE, placed_of(rooms, layout), demo_price_book(), planted(layout=layout, rooms=rooms))
    assert found.lawn_rectangle_ft == (60, 40)


def test_scattered_lawn():
    """Of three equal lawns none is half of all: a sixth of all lawn is lacking."""
    layout = Layout((stand("fire", 16, 0, 6, 40), stand("nook", 38, 0, 6, 40)))
    found = planting_measures(BARE, placed_of(plain_rooms(), layout), demo_price_book(), planted(layout=layout))
    assert found.lawn_rectangle_ft == (40, 16)
    assert found.scattered_sqft == pytest.approx(3 * 640 / 6)
