"""Steps on the plan: as many lines as risers, at the edge of two terraces, one tread apart."""

from dataclasses import replace
from math import dist

import pytest
from shapely import LineString, box

from optimizer.circulation import Leg, Way
from optimizer.drawing.flight_marks import flight_marks
from optimizer.grading import grade
from optimizer.layout import Layout, placed_of
from optimizer.site import SpotLevel
from tests.yards import PLAIN_SITE, plain_rooms, stand

# A bank that falls 3 ft from y = 20 to y = 30, level above and below it.
BANK = tuple(SpotLevel((x, y), z) for x in (0, 60) for y, z in ((12.0, 0.9), (20.0, 0.9), (30.0, -2.1), (40.0, -2.1)))
SITE = replace(PLAIN_SITE, levels=BANK)
TWO = Layout((stand("table", 24, 16, 14, 12), stand("nook", 24, 28, 8, 7)))


def test_a_line_for_each_riser():
    (flight,) = (f for f in grade(SITE, placed_of(plain_rooms(), TWO)).flights if set(f.between) == {"table", "nook"})
    lines = [mark.points for mark in flight_marks(SITE, placed_of(plain_rooms(), TWO), ())]
    assert len(lines) == flight.risers
    # The top riser lies on the shared edge y = 28; one goes down into the nook.
    assert [y for _, y in lines[0]] == pytest.approx([28, 28])
    assert {round(dist(*line), 6) for line in lines} == {flight.width_ft}
    assert lines[1][0][1] - lines[0][0][1] == pytest.approx(flight.tread_in / 12)


TRIP = ("kitchen door", "nook")
NOOK = Layout((stand("nook", 17, 32, 8, 7),))
WAY = Way(TRIP, 3.0, ((20.0, 12.0), (21.0, 17.0), (21.0, 32.0), (21.0, 35.0)), 24.0)


def on_the_way(paved, *points):
    """Risers of the way down the bank, on a leg of it that is paved."""
    legs = (Leg(points, 3.0, "service", (TRIP,)),)
    return [mark.points for mark in flight_marks(SITE, placed_of(plain_rooms(), NOOK), (WAY,), legs, paved)]


def test_steps_on_a_way_lie_square_across_its_paving():
    """The walk slants over the landing: the steps do not, they lie on the paved leg and are as wide."""
    (flight,) = (f for f in grade(SITE, placed_of(plain_rooms(), NOOK), (WAY,)).flights if f.between == TRIP)
    paved = box(19.5, 17.0, 22.5, 32.0)
    lines = on_the_way(paved, (21.0, 17.0), (21.0, 32.0))
    assert len(lines) == flight.risers
    assert {(round(x1 - x2, 6), round(y1 - y2, 6)) for (x1, y1), (x2, y2) in lines} == {(3.0, 0.0)}
    assert all(paved.buffer(0.06).covers(LineString(line)) for line in lines)
    # Seen from above: one goes down away from the house.
    assert [line[0][1] for line in lines] == sorted(line[0][1] for line in lines)


def test_steps_on_a_slanting_leg_are_square_to_it():
    ends = ((12.0, 17.0), (27.0, 32.0))
    lines = on_the_way(LineString(ends).buffer(1.5, cap_style="flat"), *ends)
    assert lines
    assert all((x2 - x1) + (y2 - y1) == pytest.approx(0, abs=1e-6) for (x1, y1), (x2, y2) in lines)


def test_no_steps_where_a_way_is_too_short_for_them():
    """Between a landing and the terrace that it is built up to there is no ground for treads of their own."""
    assert on_the_way(box(19.5, 31.2, 22.5, 32.0), (21.0, 31.2), (21.0, 32.0)) == []


def test_level_ground_has_no_steps():
    assert list(flight_marks(PLAIN_SITE, placed_of(plain_rooms(), TWO), ())) == []
