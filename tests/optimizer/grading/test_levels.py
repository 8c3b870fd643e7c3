"""Levels of paved rooms."""

from dataclasses import replace

import pytest

from tests.optimizer.grading.slopes import graded, on_plane
from tests.yards import stand

TABLE = stand("table", 60, 30, 14, 12)


def levels(site, *placements):
    """Levels by room."""
    return dict(graded(site, *placements).levels_ft)


def test_a_single_room_balances():
    """A free room lies at the mean of its ground: the level at its middle on a plane, in hundredths."""
    assert levels(on_plane(1.0, east=0.02, north=-0.01), TABLE) == {"table": pytest.approx(1 + 1.34 - 0.36)}


def test_what_is_not_paved_has_no_level():
    """A lawn follows the ground: no level, no earth, no wall."""
    found = graded(on_plane(north=0.2), stand("grass", 60, 30, 20, 20))
    assert found.levels_ft == found.earth == found.walls == found.falls == ()


@pytest.mark.parametrize(("north", "together"), [(0.06, True), (0.08, False)])
def test_less_than_two_risers_apart_is_one_terrace(north, together):
    """Two rooms 10 ft apart in the middle: 7.2 in of difference become one level, 9.6 in stay."""
    found = levels(on_plane(north=north), stand("fire", 60, 30, 8, 10), stand("nook", 60, 40, 8, 10))
    assert (found["fire"] == found["nook"]) == together
    if together:
        assert found["fire"] == pytest.approx(north * 40)


def test_a_terrace_lies_at_the_mean_by_area():
    """A room three times as large weighs three times as much."""
    found = levels(on_plane(north=0.04), stand("fire", 60, 30, 24, 10), stand("nook", 60, 40, 8, 10))
    assert found == {room: pytest.approx(round((3 * 1.4 + 1.8) / 4, 2)) for room in ("fire", "nook")}


def test_rooms_that_do_not_touch_stay():
    """A gap of 3 ft leaves both rooms at their own balance."""
    found = levels(on_plane(north=0.02), stand("fire", 60, 30, 8, 10), stand("nook", 60, 43, 8, 10))
    assert found == {"fire": pytest.approx(0.7), "nook": pytest.approx(0.96)}


@pytest.mark.parametrize(("front", "y_ft", "together"), [("-y", 42, True), ("-y", 50, True), ("+y", 50, False)])
def test_a_kitchen_is_level_with_the_table_that_it_serves(front, y_ft, together):
    """A kitchen that touches or faces the table shares its level however steep the ground; one that looks away not."""
    found = levels(on_plane(north=0.2), TABLE, stand("cooker", 62, y_ft, 8, 6, front))
    assert (found["cooker"] == found["table"]) == together


@pytest.mark.parametrize(("floor", "level"), [(0.5, 0.38), (0.7, 0.58), (0.72, 0.0)])
def test_a_room_at_a_landing_lies_at_the_sill(floor, level):
    """At most one riser off, the room lies 1-1/2 in under the floor; further off it balances."""
    site = on_plane(house_floor=floor)
    assert levels(site, stand("table", 20, 4 + 14 / 12, 14, 12)) == {"table": pytest.approx(level)}


@pytest.mark.parametrize(("x_ft", "level"), [(24, 0.38), (25, 0.0)])
def test_a_room_by_the_house_beside_a_door(x_ft, level):
    """A room against the house ties to a door within 2 ft of its zone, which reaches to x = 22.5, and not beyond."""
    assert levels(on_plane(house_floor=0.5), stand("table", x_ft, 0, 14, 12)) == {"table": pytest.approx(level)}


def test_a_terrace_at_a_door_keeps_the_sill():
    """The neighbour of a room at a door joins it at the door's sill, so that the door needs no step."""
    found = levels(on_plane(house_floor=0.5), stand("table", 24, 0, 14, 12), stand("fire", 38, 0, 8, 8))
    assert found == {"table": pytest.approx(0.38), "fire": pytest.approx(0.38)}


def test_never_above_the_floor():
    """On ground that rises beside the house a room against it stays 1-1/2 in under the floor."""
    found = levels(on_plane(east=0.1, house_floor=0.5), stand("table", 36, 0, 14, 12))
    assert found == {"table": pytest.approx(0.38)}


def test_no_levels():
    """Without levels of the ground nothing is known, and every room lies at 0."""
    found = graded(replace(on_plane(), levels=()), TABLE, stand("nook", 74, 30, 8, 8))
    assert not found.is_known
    assert found.levels_ft == (("table", 0.0), ("nook", 0.0))
    assert [fall.outfall for fall in found.falls] == ["", ""]
    assert found.walls == found.guards == found.flights == ()
    assert found.cut_bcy == found.fill_ccy == found.hauled_off_lcy == 0
