"""Ways of trips, paths of rooms' own, and the ground they take."""

from dataclasses import replace
from itertools import pairwise
from math import dist, hypot

import pytest
from shapely import LineString, box

from optimizer.brief import Relation, Trip
from optimizer.circulation import kitchen_door, kitchen_walk_limit_ft, way_polygon, ways
from optimizer.layout import Layout, placed_of, rectangle
from optimizer.site import Building, Door
from tests.yards import KEPT, PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, stand

YARD = plain_yard()


def ways_of(*trips, layout=None, site=PLAIN_SITE):
    brief = replace(YARD.brief, trips=trips)
    return ways(site, brief, placed_of(plain_rooms(), layout or plain_layout()))


def test_a_way_from_anchor_to_anchor():
    """A way runs from the door to the middle of the kitchen's front, over the steps and in steps of 45 degrees."""
    (way,) = ways_of(Trip("kitchen door", "cooker", 9)).trips
    assert way.between == ("kitchen door", "cooker")
    assert (way.points[0], way.points[-1]) == ((20, 12), (38, 22))
    assert way.points[1] == pytest.approx((20, 12 + 4 + 14 / 12))
    assert way.length_ft == pytest.approx(sum(dist(a, b) for a, b in pairwise(way.points)))
    assert way.length_ft >= hypot(18, 10)
    assert way.width_ft == 4


def test_a_walkable_room_is_walked_to_its_centre():
    """The way to a table ends at its centre, with no doubled point."""
    (way,) = ways_of(Trip("gate", "table", 1)).trips
    assert way.points[0] == (0, 20)
    assert way.points[-1] == (31, 22)
    assert len(set(way.points)) == len(way.points)


def test_the_nearer_gate_is_taken():
    """A room open to all sides is entered on the side that makes the way shortest, and that with fewest bends."""
    ahead = plain_layout(stand("fire", 10, 16, 8, 8))
    assert ways_of(Trip("gate", "fire", 1), layout=ahead).trips[0].points[-2] == (10, 20)
    assert ways_of(Trip("gate", "fire", 1)).trips[0].points[-2][1] == 22, "one bend into its lower side"


def test_a_trip_to_a_room_left_out():
    """A trip has a way only when both of its ends are there; it is no fault."""
    found = ways_of(Trip("gate", "nook", 1), layout=plain_layout(without=("nook",)))
    assert found.trips == ()
    assert found.unreached == ()


def test_a_path_for_a_room_that_floats():
    """The fire and the nook, which no trip reaches, get paths of their own; the cooker leans on the table."""
    found = ways_of(Trip("gate", "table", 1))
    assert [way.between[0] for way in found.own_paths] == ["fire", "nook"]
    assert found.ways == found.trips + found.own_paths


def test_a_path_joins_the_nearest_way():
    """A path of its own shares the way of a trip as far as it can, and leads to a door where that is nearer."""
    site = replace(PLAIN_SITE, buildings=(), structures=())
    layout = Layout((KEPT["table"], stand("nook", 24, 4, 8, 7)))
    found = ways_of(Trip("gate", "table", 1), layout=layout, site=site)
    (path,) = found.own_paths
    assert path.between == ("nook", "gate")
    shared = [leg for leg in found.legs if {("gate", "table"), ("nook", "gate")} <= set(leg.trips)]
    assert sum(LineString(leg.points).length for leg in shared) > 10
    (to_door,) = ways_of(layout=Layout((stand("nook", 24, 18, 8, 7),))).own_paths
    assert to_door.between == ("nook", "kitchen door")


def test_no_way_is_no_exception():
    """What no way joins is named, and has no way."""
    wall = Building("wall", ((6, 0), (7, 0), (7, 40), (6, 40)))
    site = replace(PLAIN_SITE, buildings=(*PLAIN_SITE.buildings, wall))
    found = ways_of(Trip("gate", "table", 1), site=site)
    assert found.trips == ()
    assert set(found.unreached) == {"table", "cooker", "fire", "nook"}


def test_the_ground_that_ways_take():
    """A straight way of 3 ft takes 3 sq ft a foot, outside rooms and inside the boundary only."""
    layout = Layout((stand("nook", 20, 20, 8, 7),))
    site = replace(PLAIN_SITE, buildings=(), structures=())
    found = ways_of(layout=layout, site=site)
    (path,) = found.own_paths
    placed = placed_of(plain_rooms(), layout)
    ground = way_polygon(site, placed, found.legs)
    assert ground.area == pytest.approx(3 * (path.length_ft - 4), rel=0.05)
    assert ground.intersection(rectangle(layout.placements[0])).area == pytest.approx(0)
    assert box(0, 0, 60, 40).covers(ground)
    assert way_polygon(site, placed, ()).is_empty


def test_the_kitchen_door():
    """The door that a trip or relation names serves the kitchen, else the nearest to its place."""
    side = Door("side door", (50, 6), 3, (1, 0))
    house = replace(PLAIN_SITE.buildings[0], doors=(*PLAIN_SITE.buildings[0].doors, side))
    yard = on_site(YARD, buildings=(house,))
    cooker = next(room for room in plain_rooms() if room.name == "cooker")
    silent = replace(yard, brief=replace(yard.brief, trips=()))
    told = replace(
        silent, brief=replace(silent.brief, relations=(Relation(("side door", "cooker"), "near", within_ft=9),))
    )
    east = stand("cooker", 53, 4, 6, 8)
    assert kitchen_door(yard, cooker, east).name == "kitchen door"
    assert kitchen_door(told, cooker, KEPT["cooker"]).name == "side door"
    assert kitchen_door(silent, cooker, east).name == "side door"
    assert kitchen_door(silent, cooker) is None
    assert (kitchen_walk_limit_ft(yard, cooker), kitchen_walk_limit_ft(told, cooker)) == (25.0, None)
    assert kitchen_walk_limit_ft(yard, plain_rooms()[0]) is None
