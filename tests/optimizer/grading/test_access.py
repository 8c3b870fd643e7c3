"""Ways for a wheelchair."""

import pytest

from optimizer.circulation import access_of, network_of
from optimizer.grading import accessible_route, levelled
from optimizer.layout import Layout, placed_of
from tests.optimizer.grading.slopes import ROOMS, on_plane
from tests.yards import stand

TABLE = stand("table", 14, 40, 14, 12)


def route(site, *placements, end="table"):
    """Finding of the way from the back door."""
    placed = placed_of(ROOMS, Layout(placements))
    network = network_of(access_of(site, placed))
    return accessible_route(placed, levelled(site, placed), network, "back door", end)


def test_a_level_way():
    """A flush floor, level ground and a large room: nothing speaks against it."""
    found = route(on_plane(house_floor=0.1), TABLE)
    assert found.is_accessible
    assert (found.between, found.ramp_length_ft) == (("back door", "table"), 0)


@pytest.mark.parametrize(
    ("floor", "ramp_ft", "is_accessible"), [(2.0, 0, True), (2.5, 38.44, True), (2.8, 47.16, False)]
)
def test_a_high_floor(floor, ramp_ft, is_accessible):
    """40 ft of way take 2 ft of floor at 5 %; 2.38 ft need a ramp of 28.6 ft and two landings; 2.68 ft two runs."""
    found = route(on_plane(house_floor=floor), TABLE)
    assert found.is_accessible == is_accessible
    assert found.ramp_length_ft == pytest.approx(ramp_ft, abs=0.2)
    assert is_accessible or "a ramp of 32 in needs 47 ft of way and has 40 ft" in found.reasons


def test_steps_between_rooms():
    """A room that is reached only through a lower one, 28 in up, has steps before it."""
    lower, upper = stand("table", -40, 20, 180, 8), stand("nook", 14, 28, 14, 20)
    found = route(on_plane(north=0.2 * 20 / 24, house_floor=4.1), lower, upper, end="nook")
    assert found.reasons[-1] == "steps of 28 in between two rooms"


def test_a_narrow_room():
    """A room of 4 ft holds no turning circle of 5 ft."""
    found = route(on_plane(house_floor=0.1), stand("seat", 18, 40, 12, 4), end="seat")
    assert found.reasons == ("seat is too narrow for a turning circle of 5 ft",)


def test_no_way():
    """A room behind a strip that nobody crosses cannot be reached."""
    wall = stand("cooker", -40, 20, 180, 6)
    found = route(on_plane(house_floor=0.1), TABLE, wall)
    assert found.reasons == ("no way 36 in wide joins back door and table",)
