"""What holds for the grading of any rooms on any plane."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from optimizer.layout import shared_edge_ft
from tests.optimizer.grading.slopes import graded, on_plane
from tests.yards import stand

slopes = st.floats(-0.15, 0.15)
NAMES = ("table", "cooker", "fire", "nook")


@st.composite
def rows(draw):
    """Up to four rooms side by side, some of them touching, some shifted, in front of a house."""
    x, placements = draw(st.integers(0, 30)), []
    for name in NAMES[: draw(st.integers(1, 4))]:
        width, depth = draw(st.integers(6, 20)), draw(st.integers(6, 20))
        front = draw(st.sampled_from(["+x", "-x", "+y", "-y"]))
        placements.append(stand(name, x, draw(st.sampled_from([0, 6, 9])), width, depth, front))
        x += width + draw(st.sampled_from([0, 0, 3]))
    return tuple(placements)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(rows(), slopes, slopes, st.floats(-1, 3), st.integers(-40, 900))
def test_the_datum_does_not_matter(rooms, east, north, floor, up):
    """The whole site raised by whole feet: levels rise with it, and nothing else changes."""
    low = graded(on_plane(0.0, east=east, north=north, house_floor=round(floor, 2)), *rooms)
    high = graded(on_plane(up, east=east, north=north, house_floor=round(floor, 2) + up), *rooms)
    assert [z + up for _, z in low.levels_ft] == pytest.approx([z for _, z in high.levels_ft], abs=1e-6)
    for one, other in zip(low.flights, high.flights, strict=True):
        assert replace(one, riser_in=0, tread_in=0) == replace(other, riser_in=0, tread_in=0)
        assert one.riser_in == pytest.approx(other.riser_in, abs=1e-6)
    assert [w.height_ft for w in low.walls] == pytest.approx([w.height_ft for w in high.walls], abs=1e-6)
    assert low.guards == high.guards
    assert (low.cut_bcy, low.fill_ccy) == pytest.approx((high.cut_bcy, high.fill_ccy), abs=1e-6)
    assert [(f.towards, f.outfall) for f in low.falls] == [(f.towards, f.outfall) for f in high.falls]


@settings(max_examples=150, deadline=None, derandomize=True)
@given(rows(), slopes, slopes, st.none() | st.floats(-1, 3))
def test_touching_rooms_are_level_or_two_risers_apart(rooms, east, north, floor):
    """No pair of touching rooms differs by one riser, and every flight has at least two of at most 7 in."""
    found = graded(on_plane(east=east, north=north, house_floor=floor), *rooms)
    levels = dict(found.levels_ft)
    for one in rooms:
        for other in rooms:
            gap = abs(levels[one.room] - levels[other.room])
            if shared_edge_ft(one, other) > 0.02:
                assert gap < 1e-9 or gap * 12 >= 8
    for flight in found.flights:
        assert flight.risers >= 2
        assert flight.riser_in <= 7 + 1e-9
        assert flight.going[0] ** 2 + flight.going[1] ** 2 == pytest.approx(1.0)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(slopes, slopes, st.floats(6, 30), st.floats(6, 30))
def test_cut_and_fill_balance(east, north, width, depth):
    """Under a single free room on a plane cut is fill, but for the rounding of its level to a hundredth."""
    found = graded(on_plane(east=east, north=north), stand("table", 60, 30, width, depth))
    assert found.cut_bcy * 27 == pytest.approx(found.fill_ccy * 27, abs=0.006 * width * depth)
    assert found.cut_bcy >= 0


@settings(max_examples=60, deadline=None, derandomize=True)
@given(rows(), slopes, slopes, st.floats(0, 3))
def test_no_room_stands_above_the_floor_of_its_house(rooms, east, north, floor):
    """A room against the house lies at most 1-1/2 in, and a hundredth of a foot, nearer to the floor than flush."""
    found = dict(graded(on_plane(east=east, north=north, house_floor=floor), *rooms).levels_ft)
    against = [room for room in rooms if room.y_ft == 0 and room.x_ft < 50 and room.right_ft > 10]
    assert all(found[room.room] <= floor - 0.125 + 0.01 for room in against)
