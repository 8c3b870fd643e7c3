"""Steps on the plan: as many lines as risers, at the edge of two terraces, one tread apart."""

from dataclasses import replace
from math import dist

import pytest

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


def test_level_ground_has_no_steps():
    assert list(flight_marks(PLAIN_SITE, placed_of(plain_rooms(), TWO), ())) == []
