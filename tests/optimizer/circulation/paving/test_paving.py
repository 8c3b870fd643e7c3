"""From land and openings to gates, candidate lines, routes and legs."""

from dataclasses import replace
from itertools import pairwise
from math import hypot

import numpy as np
import pytest
from shapely import LineString, Point, box, union_all

from optimizer.brief import Trip
from optimizer.catalogue import Item
from optimizer.circulation.paving.candidates import lines_between, short_slants, turns
from optimizer.circulation.paving.choices import Demand, MoneyPerFoot
from optimizer.circulation.paving.gates import gates_of
from optimizer.circulation.paving.land import Land, land_of, no_path_ground
from optimizer.circulation.paving.legs import WIDTH_FT, legs_of
from optimizer.circulation.paving.nearby import nearby
from optimizer.circulation.paving.network import paved_network
from optimizer.circulation.paving.routes import routes_of
from optimizer.circulation.paving.terminals import Opening, Terminal, terminals_of
from optimizer.layout import Layout, placed_of
from optimizer.site import Door, Entrance
from tests.open_land import graph_over, length_of, network_over, open_land
from tests.yards import PLAIN_SITE, bathing, laid_table, plain_layout, plain_rooms, plain_yard, sized, stand

YARD = plain_yard()
BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=())


def paved(*trips, site=BARE, layout, rooms=None, weights=None):
    brief = replace(YARD.brief, trips=trips, weights=weights or YARD.brief.weights)
    return paved_network(site, brief, placed_of(rooms or plain_rooms(), layout))


def lines_on(ground, points, pairs):
    """Candidate lines that lie on a ground."""
    near = nearby(ground)
    lines = lines_between(near, points, np.array(pairs))
    return lines.only(near.covers(lines.corners))


def test_candidate_lines_between_two_points():
    """Slanted pairs get five lines with one or two bends, and the straight one as a last resort; all on the ground.

    A right angle is one bend, as 45 degrees are.
    """
    points = np.array([[0.0, 0.0], [10.0, 4.0]])
    lines = lines_on(box(-1, -1, 11, 5), points, [[0, 1]])
    assert sorted(turns(lines.corners)) == pytest.approx([1, 1, 1, 1, 2, 12])
    assert sorted(lines.length_ft)[1] == pytest.approx(6 + 4 * 2**0.5)
    assert len(lines_on(box(-1, -1, 11, 0.5), points, [[0, 1]]).first) == 0


def test_a_slanted_leg_under_8_ft_counts_as_two_bends_more():
    """Of so much of each step as is to be seen; along the axes short steps are no slants."""
    slanted = np.array([[(0.0, 0.0), (10.0, 10.0), (20.0, 10.0), (20.0, 10.0)]])
    for seen, more in (((7.9, 10, 0), 2), ((8, 10, 0), 0), ((0, 10, 0), 0), ((10, 3, 0), 0)):
        assert short_slants(slanted, np.array([seen], dtype=float)) == [more]


def test_a_short_step_aside_is_square():
    """Where two ends lie 3 ft out of line, a way of right angles is laid and none that slants, over the same bends."""
    ends = [Entrance("gate", (0, 20), 4, (1, 0)), Entrance("far gate", (60, 23), 4, (-1, 0))]
    (leg,) = paved(Trip("gate", "far gate", 20), site=replace(BARE, entrances=tuple(ends)), layout=Layout(())).legs
    assert len(leg.points) == 4
    assert all(x0 == x1 or y0 == y1 for (x0, y0), (x1, y1) in pairwise(leg.points))


def test_a_straight_pair_has_one_line():
    """Points along an axis or at 45 degrees are joined straight, and by nothing else."""
    points = np.array([[0.0, 0.0], [6.0, 0.0], [6.0, 6.0]])
    lines = lines_on(box(-1, -1, 9, 9), points, [[0, 1], [0, 2]])
    assert len(lines.first) == 2
    assert list(turns(lines.corners)) == [0, 0]


def test_facing_sides_are_joined_square():
    """Two rooms that face each other get a strip straight across, at right angles to both."""
    layout = Layout((stand("table", 10, 4, 14, 12), stand("fire", 12, 24, 8, 8)))
    (leg,) = paved(Trip("table", "fire", 10), layout=layout).legs
    assert leg.points[0][0] == leg.points[1][0]
    assert {round(y) for _, y in leg.points} == {16, 24}


def test_touching_rooms_need_no_leg():
    """Over a shared edge one steps without a way."""
    layout = Layout((stand("table", 10, 4, 14, 12), stand("fire", 12, 16, 8, 8)))
    found = paved(Trip("table", "fire", 10), layout=layout)
    assert found.legs == ()
    assert ("table", "fire") in found.routes


def test_a_trunk_is_paved_once():
    """Two trips from one gate share a trunk, and it names both."""
    gate = Entrance("gate", (0, 20), 5, (1, 0))
    layout = Layout((stand("table", 44, 4, 14, 12), stand("fire", 46, 28, 8, 8)))
    legs = paved(
        Trip("gate", "table", 10), Trip("gate", "fire", 10), site=replace(BARE, entrances=(gate,)), layout=layout
    ).legs
    trunk = max(legs, key=lambda leg: len(leg.trips))
    assert set(trunk.trips) == {("gate", "table"), ("gate", "fire")}
    assert length_of(legs) < 44 + 46


def test_dearer_paving_never_lays_more():
    """The more paving counts, the less of it is laid, and the longer one walks."""
    points = [(0.0, 0.0), (40.0, 40.0), (40.0, 0.0)]
    lengths = [
        length_of(network_over(points, [(0, 1), (0, 2)], MoneyPerFoot(1.0, paving))) for paving in (0.1, 5.0, 200.0)
    ]
    assert lengths[0] == pytest.approx(40 * 2**0.5 + 40)
    assert lengths[0] >= lengths[1] >= lengths[2] == pytest.approx(80)


def test_main_ways_go_round_a_lawn_and_others_across():
    """A way of many trips is laid round a lawn; one of few leads over the grass, which is not paved."""
    rooms = (*plain_rooms(), sized("grass", "lawn", 20, 20))
    layout = Layout((stand("grass", 20, 10, 20, 20), stand("fire", 46, 16, 8, 8)))
    many = paved(Trip("gate", "fire", 20), layout=layout, rooms=rooms)
    few = paved(Trip("gate", "fire", 2), layout=layout, rooms=rooms)
    assert length_of(many.legs) > 46
    assert length_of(few.legs) < 28


def test_no_way_through_chairs():
    """The ground of a table and of the chairs round it is no ground for a way."""
    room = laid_table("table", 14, 12)
    layout = Layout((stand("table", 20, 14, 14, 12),))
    (kept,) = no_path_ground(placed_of((room,), layout))
    assert kept.bounds == pytest.approx((22, 16, 32, 24))
    land = land_of(BARE, placed_of((room,), layout), width_ft=4)
    assert not land.ground.covers(Point(27, 20))
    assert land.ground.covers(Point(10, 20))


def test_a_fire_is_passed_on_its_paving_outside_its_seats():
    """Behind the seats ways run over a fire's own paving; between them, and where nobody knows the seats, none does."""
    seats = (Item("fire pit", 9, 9, 2, 2), *(Item("fire seat", x, y, 2, 2, seats=1) for x in (4, 14) for y in (4, 14)))
    room = sized("fire", "fire", 20, 20)
    ring = replace(room, choices=(replace(room.choices[0], furniture=seats),))
    layout = Layout((stand("fire", 20, 10, 20, 20),))
    seated, bare = (land_of(BARE, placed_of((one,), layout), width_ft=4) for one in (ring, room))
    assert [seated.ground.covers(Point(at)) for at in ((22, 20), (23, 20), (30, 15), (30, 28))] == [1, 0, 0, 1]
    assert seated.paved == (), "as wide as it is a way is laid, on the fire's paving or beside it"
    assert [bare.ground.covers(Point(at)) for at in ((22, 20), (17, 20))] == [0, 1]


def test_a_pool_is_passed_on_its_deck_and_coping():
    """Water of 8 x 12 ft in a deck of 4 ft, with a foot of coping: a way of 4 ft has the deck, and not the water."""
    pool = Item("water", 4, 4, 8, 12)
    coping = (Item("coping", 3, 3, 10, 1), Item("coping", 3, 16, 10, 1))
    room = sized("pool", "pool", 16, 20)
    room = replace(room, choices=(replace(room.choices[0], furniture=(pool, *coping)),))
    land = land_of(BARE, placed_of((room,), Layout((stand("pool", 20, 10, 16, 20, "+y"),))), width_ft=4)
    assert [land.ground.covers(Point(at)) for at in ((22, 20), (34, 20), (28, 12), (28, 15), (23, 20))] == [
        1,
        1,
        1,
        0,
        0,
    ]


@pytest.mark.parametrize(
    ("edge", "corners"),
    [
        ((28, 30), [(28, 30)]),
        ((36, 20), [(28, 30), (36, 30)]),
        ((20, 20), [(28, 30), (20, 30)]),
        ((30, 10), [(28, 30), (36, 30), (36, 10)]),
        ((26, 10), [(28, 30), (20, 30), (20, 10)]),
    ],
)
def test_people_reach_the_front_of_a_pool_along_its_deck(edge, corners):
    """From the middle of the front to a point of the edge, the shorter way round the water."""
    placed = placed_of((bathing("pool"),), Layout((stand("pool", 20, 10, 16, 20, "+y"),)))
    pool = next(terminal for terminal in terminals_of(BARE, placed) if terminal.name == "pool")
    assert [pytest.approx(corner) for corner in corners] == list(pool.inside(edge))
    assert [room.bounds for room in land_of(BARE, placed, width_ft=4).paved] == [(20, 10, 36, 30)], "nothing is laid"


def test_a_leg_is_as_wide_as_its_use_wants_and_the_land_allows():
    """Guests' ways get 5 ft, other main ways 4, the rest 3; in a narrow passage they get the next of these widths."""
    line = {("a", "b"): ((0.0, 0.0), (20.0, 0.0))}
    land = open_land()
    assert [legs_of(land, line, {("a", "b"): count}, ())[0].width_ft for count in (20, 2)] == [4, 3]
    assert legs_of(land, line, {("a", "b"): 20}, {("a", "b")})[0].width_ft == WIDTH_FT["arrival"]
    passage = box(-1, -1.75, 21, 1.75)
    narrow = Land(passage, passage, 3.0, (), ())
    assert legs_of(narrow, line, {("a", "b"): 20}, ())[0].width_ft == 3


def test_a_way_has_one_width():
    """Beyond a narrow passage, and beyond the branching of another trip, a way is no wider than within it."""
    lines = {("a", "b"): ((0.0, 0.0), (60.0, 0.0)), ("a", "c"): ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0))}
    ground = box(-9, -9, 70, 30).difference(union_all([box(40, 1.6, 50, 30), box(40, -9, 50, -1.6)]))
    legs = legs_of(Land(ground, ground, 3.0, (), ()), lines, dict.fromkeys(lines, 20), ())
    assert len(legs) == 3
    assert {leg.width_ft for leg in legs} == {3}
    assert {leg.width_ft for leg in legs_of(open_land(), lines, dict.fromkeys(lines, 20), ())} == {4}
    few = {("a", "b"): 20, ("a", "c"): 2}
    assert {leg.width_ft for leg in legs_of(open_land(), lines, few, ())} == {3, 4}, "another use, another way"


def test_nothing_joins_ends_at_ground():
    """Where no line lies on the ground there is no route, and it is no exception."""
    island = Land(box(-1, -1, 1, 1), box(-1, -1, 1, 1), 4.0, (), ())
    assert routes_of(graph_over([(0.0, 0.0), (40.0, 0.0)], island), [Demand(0, 1, 5)], MoneyPerFoot(1, 1)) == (None,)


def test_a_door_opens_over_its_steps():
    """From a door with steps the way leaves over the front of the landing, not beside it."""
    found = paved(Trip("kitchen door", "fire", 9), site=PLAIN_SITE, layout=plain_layout())
    points = found.routes["kitchen door", "fire"].points
    assert points[1] == pytest.approx((20, 12 + 4 + 14 / 12))
    assert hypot(points[1][0] - points[0][0], points[1][1] - points[0][1]) > 5


def test_a_landing_beside_a_terrace_is_left_over_its_side():
    """Where a landing with steps touches a terrace, and the ground before it is taken, nobody walks round the terrace."""
    door = Door("side door", (30, 12), 3, (0, 1))
    house = replace(PLAIN_SITE.buildings[0], doors=(door,))
    layout = Layout((stand("table", 32.5, 12, 14, 12), stand("cooker", 24, 18, 8, 6), stand("nook", 20, 12, 7, 6)))
    found = paved(Trip("side door", "table", 20), site=replace(BARE, buildings=(house,)), layout=layout)
    assert found.legs == ()
    assert found.routes["side door", "table"].points[1] == pytest.approx((32.5, 14.6), abs=0.1)


@pytest.mark.parametrize(("gap", "width"), [(6, 4), (3, 3)])
def test_a_main_way_keeps_half_its_width_off_a_lawn(gap, width):
    """Between a lawn and the boundary the whole way lies beside the lawn, no wider than there is room."""
    rooms = (*plain_rooms(), sized("grass", "lawn", 20, 34))
    layout = Layout((stand("grass", 20, gap, 20, 34), stand("fire", 46, 2, 8, 8)))
    site = replace(BARE, entrances=(Entrance("gate", (0, 2), 5, (1, 0)),))
    (leg,) = paved(Trip("gate", "fire", 20), site=site, layout=layout, rooms=rooms).legs
    assert leg.width_ft == width
    assert all(y + width / 2 <= gap + 0.05 for x, y in leg.points if 20 < x < 40)
    assert len(LineString(leg.points).intersection(box(20, gap - width / 2 + 0.05, 40, gap + 34)).coords) == 0


def test_a_lawn_across_a_yard_is_crossed():
    """A main way goes over a lawn rather than all the way round the house."""
    rooms = (*plain_rooms(), sized("grass", "lawn", 48, 4))
    layout = Layout((stand("grass", 2, 22, 48, 4), stand("fire", 20, 29, 8, 8)))
    found = paved(Trip("kitchen door", "fire", 20), site=PLAIN_SITE, layout=layout, rooms=rooms)
    assert found.over_lawns_ft["kitchen door", "fire"] > 4
    assert length_of(found.legs) < 20


def test_a_way_turns_on_the_edge_where_nothing_is_left_before_it():
    """A gate lies half a way's width outside, or on the edge itself where the ground ends there."""
    terminals = (
        Terminal("terrace", (10, 5), (Opening(((0, 10), (20, 10)), (0, 1)),)),
        Terminal("far", (10, 50), (Opening(((0, 50), (20, 50)), (0, -1)),)),
    )
    for top, turn in ((60, 10 + 2 - 0.02), (11, 10)):
        ground = box(0, 0, 20, top)
        gates = gates_of(Land(ground, ground, 4.0, (), ()), terminals, {0: {1}, 1: {0}})
        assert {gate.at[1] for gate in gates if gate.terminal == 0} == {turn}


def test_a_room_with_no_ground_before_it_has_no_route():
    """A room that nothing leads to, here one inside the house, leaves the other trips their ways."""
    layout = Layout((stand("fire", 46, 20, 8, 8), stand("cooker", 30, 2, 8, 6)))
    found = paved(Trip("kitchen door", "fire", 9), Trip("kitchen door", "cooker", 9), site=PLAIN_SITE, layout=layout)
    assert set(found.routes) == {("kitchen door", "fire")}
