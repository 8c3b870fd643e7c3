"""How guests come in."""

from dataclasses import replace

import pytest

from optimizer.appraisal.arrival import approach_point, arrival_length_ft, arrival_of, risers_seen_share
from optimizer.brief import Trip
from optimizer.circulation import access_of, network_of
from optimizer.layout import placed_of
from optimizer.site import Entrance
from tests.yards import PLAIN_SITE, plain_layout, plain_rooms

DRIVE = Entrance("drive", (0, 5), 10, (1, 0), used_by=("machines",))
SIDE = Entrance("side gate", (60, 20), 4, (-1, 0))
GATE = Entrance("gate", (0, 20), 5, (1, 0))


@pytest.mark.parametrize(
    ("entrances", "starts", "name"),
    [
        ((DRIVE, SIDE, GATE), (), "side gate"),
        ((DRIVE, SIDE, GATE), ("gate",), "gate"),
        ((DRIVE, SIDE, GATE), ("drive",), "side gate"),
        ((DRIVE,), ("drive",), None),
        ((), (), None),
    ],
)
def test_the_guests_entrance(entrances, starts, name):
    """One that guests use; the one where a trip starts before the first."""
    site = replace(PLAIN_SITE, entrances=entrances)
    found = arrival_of(site, tuple(Trip(start, "table", 1) for start in starts))
    assert (found.name if found else None) == name


def test_one_stands_inside():
    """2 ft into the yard."""
    assert approach_point(SIDE) == (58, 20)


def test_risers_seen():
    """Of flights of 3 and 5 risers the larger is seen: 5/8; what is asked is its place and height."""
    flights = (((0.0, 0.0), 1.0, 3), ((9.0, 0.0), 2.0, 5))
    assert risers_seen_share(flights, lambda at, z_ft: at == (9.0, 0.0) and z_ft == 2.0) == pytest.approx(0.625)
    assert risers_seen_share(flights, lambda at, z_ft: False) == 0
    assert risers_seen_share((), lambda at, z_ft: True) is None


def test_way_to_the_gathering():
    """From the gate at (0, 20) to the middle of the table at (31, 22), which is open on all sides: the straight line
    is 31.06 ft, and the way enters within the room."""
    placed = placed_of(plain_rooms(), plain_layout())
    length_ft = arrival_length_ft(network_of(access_of(PLAIN_SITE, placed)), GATE, placed)
    assert length_ft is not None
    assert 31.06 <= length_ft <= 31.06 * 1.1


def test_no_gathering_no_way():
    """Without a table, or from an entrance that is not there, there is no length."""
    without, whole = (placed_of(plain_rooms(), plain_layout(without=names)) for names in (("table",), ()))
    assert arrival_length_ft(network_of(access_of(PLAIN_SITE, without)), GATE, without) is None
    assert arrival_length_ft(network_of(access_of(PLAIN_SITE, whole)), SIDE, whole) is None
