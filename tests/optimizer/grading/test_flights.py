"""Flights of steps."""

from dataclasses import replace
from itertools import pairwise

import pytest

from optimizer.catalogue import Item
from optimizer.circulation import Way
from optimizer.grading import GROUND, grade
from optimizer.layout import Layout, placed_of
from tests.optimizer.grading.slopes import graded, on_plane
from tests.yards import plain_rooms, sized, stand

LOW, HIGH = stand("fire", 60, 30, 8, 10), stand("nook", 60, 40, 8, 10)


def test_between_rooms():
    """24 in between touching rooms: four risers of 6 in with treads of 14, going up from the lower room."""
    (flight,) = graded(on_plane(north=0.2), LOW, HIGH).flights
    assert flight.between == ("fire", "nook")
    assert (flight.risers, flight.riser_in, flight.tread_in) == (4, pytest.approx(6.0), pytest.approx(14.0))
    assert (flight.at, flight.going, flight.width_ft) == ((64, 40), (0, 1), 5)
    assert (flight.needs_handrail, flight.needs_guard, flight.landings) == (True, False, 0)
    assert (flight.rise_ft, flight.run_ft) == (pytest.approx(2.0), pytest.approx(3.5))


def test_the_lower_room_may_come_second():
    """The order of the rooms does not matter: a flight always climbs from the lower one."""
    (flight,) = graded(on_plane(north=-0.2), LOW, HIGH).flights
    assert (flight.between, flight.going) == (("nook", "fire"), (0, -1))


@pytest.mark.parametrize(
    ("chairs_at", "middle", "width"),
    [((), 64, 5), ((1,), 66.5, 5), ((7,), 60.5, 3), ((4.5, 5), 60.5, 3), ((0, 3, 6, 9), 64, 5)],
)
def test_a_flight_moves_along_the_edge_to_be_clear_of_seats(chairs_at, middle, width):
    """Chairs 1 1/2 ft before the foot: in the middle where that is clear, else at an end, else narrow; where nothing
    is clear in the middle, as if nobody sat there.
    """
    fire = sized("fire", "fire", 10, 10)
    chairs = tuple(Item("fire seat", x, 4, 1, 1, seats=1) for x in chairs_at)
    rooms = plain_rooms(replace(fire, choices=(replace(fire.choices[0], furniture=chairs),)))
    layout = Layout((stand("fire", 59, 30, 10, 10), stand("nook", 59, 40, 10, 10)))
    (flight,) = grade(on_plane(north=0.2), placed_of(rooms, layout)).flights
    assert (flight.at, flight.width_ft) == (pytest.approx((middle, 40)), width)
    assert flight.foot.at == pytest.approx((middle, 36.5))


def test_sideways():
    """Rooms side by side on ground that rises to the west."""
    (flight,) = graded(on_plane(east=-0.2), stand("fire", 60, 30, 10, 8), stand("nook", 70, 34, 10, 8)).flights
    assert (flight.at, flight.going, flight.width_ft) == ((70, 36), (-1, 0), 4)


def test_a_high_flight():
    """60 in: nine risers, so a landing inside, a handrail and a guard."""
    (flight,) = graded(on_plane(north=0.5), LOW, HIGH).flights
    assert (flight.risers, flight.landings, flight.needs_handrail, flight.needs_guard) == (9, 1, True, True)


def test_an_edge_too_short_to_pass():
    """Rooms that share 2 ft of edge have no flight: nobody passes there."""
    assert graded(on_plane(north=0.2), LOW, stand("nook", 66, 40, 8, 10)).flights == ()


def test_a_door_above_the_ground():
    """A floor 14 in up: two risers of 7 in from the ground, at the landing's edge, towards the house."""
    (flight,) = graded(on_plane(house_floor=14 / 12)).flights
    assert (flight.between, flight.risers, flight.riser_in) == ((GROUND, "back door"), 2, pytest.approx(7.0))
    assert (flight.at, flight.going) == ((20, 4), (0, -1))


def test_a_room_at_the_sill_takes_the_doors_steps_away():
    """Where a room meets the landing at its level, the door needs no steps."""
    assert graded(on_plane(house_floor=0.5), stand("table", 20, 4 + 14 / 12, 14, 12)).flights == ()


def walk(*points):
    """A way between two rooms."""
    length = sum(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 for (x0, y0), (x1, y1) in pairwise(points))
    return Way(("fire", "nook"), 3.0, points, length)


@pytest.mark.parametrize(("north", "risers"), [(0.03, 0), (0.035, 2)])
def test_a_way_steeper_than_a_walk(north, risers):
    """Rooms 30 ft apart in the middle, 20 ft of way between: 10.8 in are a walk of 4.5 %, 12.6 in are steps."""
    far = stand("nook", 60, 60, 8, 10)
    found = graded(on_plane(north=north), LOW, far, ways=[walk((64, 35), (64, 65))]).flights
    assert [flight.risers for flight in found] == [risers] * bool(risers)


def test_steps_on_a_way():
    """6 ft of rise on 20 ft: eleven risers from the upper room down, climbing north, one flight however many ways pass there."""
    far = stand("nook", 60, 60, 8, 10)
    ways = [walk((64, 35), (64, 65)), walk((64, 65), (64, 35))]
    (flight,) = graded(on_plane(north=0.2), LOW, far, ways=ways).flights
    assert (flight.risers, flight.landings, flight.going) == (11, 1, pytest.approx((0, 1)))
    assert flight.at == pytest.approx((64, 60), abs=0.75)


def test_steps_lie_where_a_way_runs_straight():
    """A way that leaves the upper room for 2 ft and then turns: the steps lie on the slanted stretch, square to it."""
    far = stand("nook", 60, 60, 8, 10)
    way = walk((64, 65), (64, 58), (72, 50), (72, 45), (64, 37))
    (flight,) = graded(on_plane(north=0.08), LOW, far, ways=[way]).flights
    assert flight.going == pytest.approx((-(0.5**0.5), 0.5**0.5))
    assert flight.at == pytest.approx((64, 58), abs=0.75)
    assert flight.foot.at[1] > 50


@pytest.mark.parametrize(("bench_x", "top_y"), [(80, 60), (66.5, 56.5)])
def test_steps_on_a_way_move_down_it_to_be_clear_of_seats(bench_x, top_y):
    """3 ft of fall on 20 ft: five treads of 14 in from the upper room down, whose foot lies at y = 54; with a seat a foot
    beside the way there they lie 3 ft farther down, as soon as the foot is 3 ft from it.
    """
    table = sized("table", "gathering", 2, 2)
    seat = (Item("chair", 0.5, 1.0, 1, 1, seats=1),)
    rooms = plain_rooms(replace(table, choices=(replace(table.choices[0], furniture=seat),)))
    layout = Layout((LOW, stand("nook", 60, 60, 8, 10), stand("table", bench_x, 53, 2, 2)))
    (flight,) = grade(on_plane(north=0.1), placed_of(rooms, layout), [walk((64, 35), (64, 65))]).flights
    assert flight.at == pytest.approx((64, top_y), abs=0.5)


def test_ways_that_cross_have_steps_of_their_own():
    """Two ways cross at right angles on ground that rises along both; each climbs by a flight in its own direction, though
    the places of the two come within a few feet of each other. A way along the same line shares its flight.
    """
    slope, over, along = on_plane(east=0.1, north=0.1), walk((50, 58), (80, 58)), walk((65, 30), (65, 60))
    found = graded(slope, ways=[along, over]).flights
    assert sorted(tuple(round(abs(part)) for part in flight.going) for flight in found) == [(0, 1), (1, 0)]
    assert len(graded(slope, ways=[along, walk((65, 32), (65, 60))]).flights) == 1


def test_a_small_rise_on_a_short_way_is_a_ramped_path():
    """6 in on 8 ft are steeper than a walk and gentler than 1:12: two risers of 3 in are not built for it."""
    near = stand("nook", 60, 48, 8, 10)
    assert graded(on_plane(north=0.5 / 18), LOW, near, ways=[walk((64, 35), (64, 53))]).flights == ()


def test_ways_through_touching_rooms_add_no_steps():
    """A way from one room into the next takes the flight between them."""
    found = graded(on_plane(north=0.2), LOW, HIGH, ways=[walk((64, 35), (64, 45))]).flights
    assert len(found) == 1


def test_nobody_walks_over_an_edge_that_no_way_crosses():
    """Two rooms that touch, 24 in apart in height: steps between them where a way goes over, or where one of the two is
    reached in no other way; where both have ways of their own a wall is enough.
    """
    slope = on_plane(north=0.2)
    over, own = walk((64, 35), (64, 45)), (walk((56, 35), (61, 35)), walk((56, 45), (61, 45)))

    def between(*ways):
        return [set(flight.between) for flight in graded(slope, LOW, HIGH, ways=ways).flights]

    assert between(over) == between(own[0]) == between() == [{"fire", "nook"}]
    assert {"fire", "nook"} not in between(*own)
    assert graded(slope, LOW, HIGH, ways=own).walls
