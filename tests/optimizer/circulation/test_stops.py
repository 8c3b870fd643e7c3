"""Walkable ground, gates, and what the ground joins."""

from dataclasses import replace

import pytest
from shapely import Point

from optimizer.brief import Trip
from optimizer.circulation import access_of, unreached, walkable_ground
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Entrance, Wall
from tests.yards import (
    PLAIN_SITE,
    bathing,
    circled,
    on_site,
    plain_layout,
    plain_rooms,
    plain_yard,
    round_at,
    sized,
    stand,
)

NOTHING = Layout(())
BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=())


def stop_of(name, layout, *, rooms=None, site=BARE):
    return access_of(site, placed_of(rooms or plain_rooms(), layout)).stop(name)


def test_ground_keeps_half_a_way_from_everything():
    """The centre of a 3 ft way keeps 1.5 ft from boundary and rooms, less the tolerance of what touches."""
    assert walkable_ground(BARE, placed_of((), NOTHING)).bounds == pytest.approx((1.48, 1.48, 58.52, 38.52))
    ground = walkable_ground(BARE, placed_of(plain_rooms(), Layout((stand("nook", 20, 20, 8, 7),))))
    assert not ground.covers(Point(29.4, 23))
    assert ground.covers(Point(29.5, 23))


def test_what_may_be_walked_on():
    """Walkable rooms, structures and ground that allows paths are ground; other kept-out ground is not."""
    pool = walkable_ground(BARE, placed_of((bathing("pool"),), Layout((stand("pool", 20, 10, 16, 18, "+y"),))))
    assert [pool.covers(Point(at)) for at in ((22, 20), (28, 27), (28, 17))] == [1, 1, 0], "deck, deck, water"
    ground = walkable_ground(PLAIN_SITE, placed_of(plain_rooms(), plain_layout()))
    assert ground.covers(Point(31, 22))
    assert ground.covers(Point(49, 34))
    assert ground.covers(Point(57.5, 20))
    shut = replace(PLAIN_SITE, keep_outs=(replace(PLAIN_SITE.keep_outs[0], allow=("lawn",)),))
    assert not walkable_ground(shut, placed_of(plain_rooms(), plain_layout())).covers(Point(57.5, 20))


def test_a_trunk_is_in_the_way():
    """Nobody walks within 1 ft of a trunk's centre, or within the trunk of a thicker tree."""
    tree = PLAIN_SITE.trees[0]
    for diameter_ft, radius_ft in ((0.8, 1.0), (4.0, 2.0)):
        site = replace(BARE, trees=(replace(tree, at=(30, 20), trunk_diameter_ft=diameter_ft),))
        ground = walkable_ground(site, placed_of((), NOTHING))
        assert ground.distance(Point(30, 20)) == pytest.approx(radius_ft + 1.48, abs=0.2)


@pytest.mark.parametrize(
    ("front", "gate"), [("+x", (27.5, 24)), ("-x", (18.5, 24)), ("+y", (23, 29.5)), ("-y", (23, 18.5))]
)
def test_a_kitchen_has_one_gate(front, gate):
    """A room that serves to its front has one gate, 1.5 ft before the middle of the front."""
    stop = stop_of("cooker", Layout((stand("cooker", 20, 20, 6, 8, front),)))
    assert stop.gates == (pytest.approx(gate),)


def test_open_sides_turn_with_the_room():
    """Sides that are not open have no gate; left is left of one who looks out to the front."""
    room = sized("nook", "nook", 8, 7)
    closed = replace(room.choices[0], sides=(("left", "seat wall"), ("back", "back"), ("front", "open")))
    rooms = plain_rooms(replace(room, choices=(closed,)))
    up = stop_of("nook", Layout((stand("nook", 20, 20, 8, 7, "+y"),)), rooms=rooms)
    assert set(up.gates) == {(24, 28.5), (29.5, 23.5)}
    right = stop_of("nook", Layout((stand("nook", 20, 20, 7, 8, "+x"),)), rooms=rooms)
    assert set(right.gates) == {(28.5, 24), (23.5, 18.5)}


def test_the_gate_is_in_the_longest_free_stretch():
    """Beside a neighbour a gate moves to the middle of what is left of the side."""
    rooms = plain_rooms(sized("bed", "bed", 5, 5))
    stop = stop_of("cooker", Layout((stand("cooker", 20, 20, 8, 6, "+y"), stand("bed", 17, 26, 5, 5))), rooms=rooms)
    assert stop.gates == (pytest.approx((0.5 * (23.48 + 26.5), 27.5)),)


def test_a_gate_in_a_walkable_room():
    """A kitchen that shares 3 ft of its front with a table is reached across it, and else shut in."""
    wall = Building("wall", ((10, 26), (23, 26), (23, 32), (10, 32)))
    shut = replace(BARE, buildings=(wall,))
    assert stop_of("cooker", Layout((stand("cooker", 20, 20, 6, 6, "+y"),)), site=shut).gates != ()
    wider = replace(shut, buildings=(replace(wall, outline=((10, 26), (26, 26), (26, 32), (10, 32))),))
    assert stop_of("cooker", Layout((stand("cooker", 20, 20, 6, 6, "+y"),)), site=wider).gates == ()


def test_a_walkable_room_is_entered_at_its_centre():
    """A walkable room's gate is its centre, or the nearest ground in it where something stands there."""
    assert stop_of("table", Layout((stand("table", 24, 16, 14, 12),))).gates == ((31, 22),)
    post = replace(BARE, trees=(replace(PLAIN_SITE.trees[0], at=(30.5, 22)),))
    (gate,) = stop_of("table", Layout((stand("table", 24, 16, 14, 12),)), site=post).gates
    assert 31 < gate[0] < 34


def test_where_one_stands_at_an_opening():
    """One stands 2 ft out of a door and 2 ft inside an entrance, or at the nearest ground within 2.5 ft of that."""
    access = access_of(PLAIN_SITE, placed_of((), NOTHING))
    assert access.stop("kitchen door").gates == ((20, 14),)
    assert access.stop("gate").gates == ((2, 20),)
    corner = replace(BARE, entrances=(Entrance("corner", (0, 0), 3, (1, 0)),))
    assert access_of(corner, placed_of((), NOTHING)).stop("corner").gates == (pytest.approx((2, 1.48)),)
    walled = replace(BARE, buildings=(Building("wall", ((0, 10), (6, 10), (6, 30), (0, 30))),))
    assert access_of(walled, placed_of((), NOTHING)).stop("gate").gates == ()


@pytest.mark.parametrize(("gap_ft", "joined"), [(3.0, True), (2.99, True), (2.95, False)])
def test_a_gap_of_a_clear_way_joins(gap_ft, joined):
    """A gap of 3 ft between two buildings joins what lies on either side; a narrower one does not."""
    walls = (
        Building("south", ((30, 0), (31, 0), (31, 20), (30, 20))),
        Building("north", ((30, 20 + gap_ft), (31, 20 + gap_ft), (31, 40), (30, 40))),
    )
    site = replace(BARE, buildings=walls)
    brief = replace(plain_yard().brief, trips=(Trip("gate", "nook", 1),))
    assert unreached(site, brief, placed_of(plain_rooms(), Layout((stand("nook", 45, 20, 8, 7),)))) == (
        () if joined else ("nook",)
    )


def test_the_part_that_counts():
    """The part with the entrance of a trip is the rest; without one that of a trip's door, else of any door."""
    wall = Building("wall", ((30, 12), (31, 12), (31, 40), (30, 40)))
    yard = on_site(plain_yard(), buildings=(*PLAIN_SITE.buildings, wall))
    layout = Layout((stand("nook", 40, 20, 8, 7), stand("fire", 10, 22, 8, 8)))

    def missed(*trips, site=yard.site):
        return unreached(site, replace(yard.brief, trips=trips), placed_of(plain_rooms(), layout))

    assert missed(Trip("gate", "nook", 1)) == ("nook",)
    assert missed(Trip("kitchen door", "nook", 1)) == ("nook",)
    assert missed() == ("nook",)


@pytest.mark.parametrize(("wall_x_ft", "missed"), [(36, "nook"), (22, "fire")])
def test_the_largest_part_counts_where_there_is_no_opening(wall_x_ft, missed):
    """Without any door or entrance in a trip the largest part of the ground is the rest."""
    wall = Building("wall", ((wall_x_ft, 0), (wall_x_ft + 1, 0), (wall_x_ft + 1, 40), (wall_x_ft, 40)))
    brief = replace(plain_yard().brief, trips=())
    layout = Layout((stand("nook", 42, 20, 8, 7), stand("fire", 10, 22, 8, 8)))
    assert unreached(replace(BARE, buildings=(wall,)), brief, placed_of(plain_rooms(), layout)) == (missed,)


def test_a_yard_without_ground():
    """Where everything is built over, everything is unreached and nothing fails."""
    site = replace(BARE, buildings=(Building("hall", BARE.boundary),))
    brief = replace(plain_yard().brief, trips=(Trip("gate", "nook", 1),))
    assert unreached(site, brief, placed_of(plain_rooms(), Layout((stand("nook", 40, 20, 8, 7),)))) == ("gate", "nook")


def test_a_way_passes_through_the_corner_of_a_circles_square():
    """A wall reaches to 2 ft from a square's corner: no way passes there, by the circle one does."""
    wall = Wall("stub", ((30.0, 40.0), (30.0, 27.0)), "wall")
    site = replace(BARE, walls=(wall,))
    square, ring = stand("fire", 14, 9, 16, 16), round_at("fire", 14, 9, 16)
    spot = Point(29.2, 25.4)  # beside the square's corner at (30, 25), 4 ft from the circle round (22, 17)
    assert not walkable_ground(site, placed_of(plain_rooms(), Layout((square,)))).covers(spot)
    around = walkable_ground(site, placed_of(plain_rooms(circled("fire", 16)), Layout((ring,))))
    assert around.covers(spot)
    assert around.geom_type == "Polygon"


def test_a_circle_is_entered_at_its_four_axis_points():
    """Half a way outside of each, wherever its square's sides are free beside it."""
    stop = stop_of("fire", Layout((round_at("fire", 14, 9, 16),)), rooms=plain_rooms(circled("fire", 16)))
    assert {(round(x, 2), round(y, 2)) for x, y in stop.gates} == {(22, 7.5), (22, 26.5), (12.5, 17), (31.5, 17)}
