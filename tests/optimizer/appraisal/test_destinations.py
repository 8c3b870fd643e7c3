"""Fires and nooks as places that one goes to; layout rule 8, common practice, no source."""

from dataclasses import replace

import pytest
from shapely import Polygon, box

from optimizer.appraisal import destinations, destinations_loss
from optimizer.appraisal.destinations import middle_line
from optimizer.appraisal.paths import WayRun
from optimizer.appraisal.paved import overpaved_sqft
from optimizer.catalogue import rates
from optimizer.layout import Layout, placed_of
from optimizer.planting import Planting
from tests.yards import PLAIN_SITE, plain_rooms, sized, stand

NO_BEDS = Planting((), (), Polygon(), Polygon(), Polygon())
TABLE = stand("table", 24, 16, 14, 12)


def off_ft(*others, rooms=None, planting=NO_BEDS):
    """Feet off by room, with a table from (24, 16) to (38, 28)."""
    layout = Layout((TABLE, *others))
    return {
        found.room: found.off_ft
        for found in destinations(PLAIN_SITE, placed_of(rooms or plain_rooms(), layout), planting)
    }


@pytest.mark.parametrize(("x", "off"), [(40, 4.0), (44, 0.0), (50, 0.0), (68, 0.0), (70, 2.0)])
def test_a_fire_6_to_30_ft_from_the_table(x, off):
    """Nearer than 6 ft and farther than 30 every foot counts."""
    assert off_ft(stand("fire", x, 16, 8, 8))["fire"] == pytest.approx(off)


@pytest.mark.parametrize(("x", "off"), [(43, 10.0), (53, 0.0), (80, 0.0)])
def test_a_nook_15_to_45_ft_from_the_table(x, off):
    """A nook beside the party is none; and 60 ft from the only door it is far: (80, 16) is 60.1 ft from (20, 12)."""
    expected = off if x < 80 else pytest.approx(0.13, abs=0.01)
    assert off_ft(stand("nook", x, 16, 8, 7))["nook"] == expected


def test_a_bed_between_lets_a_nook_be_nearer():
    """With a bed between the two 8 ft are enough."""
    rooms = (*plain_rooms(), sized("hedge", "bed", 3, 12))
    near = stand("nook", 47, 16, 8, 7)
    assert off_ft(near)["nook"] == pytest.approx(6)
    assert off_ft(near, stand("hedge", 41, 16, 3, 12), rooms=rooms)["nook"] == 0


def test_the_loss_is_by_the_foot():
    """Feet off cost the file's rate; a yard without a gathering or a door asks for nothing."""
    found = destinations(PLAIN_SITE, placed_of(plain_rooms(), Layout((TABLE, stand("fire", 40, 16, 8, 8)))), NO_BEDS)
    assert destinations_loss(found) == pytest.approx(4 * rates().destination)
    alone = destinations(
        replace(PLAIN_SITE, buildings=()), placed_of(plain_rooms(), Layout((stand("fire", 40, 16, 8, 8),))), NO_BEDS
    )
    assert [(one.from_gathering_ft, one.from_door_ft, one.off_ft) for one in alone] == [(None, None, 0.0)]


@pytest.mark.parametrize(("bends", "detour", "off"), [(2, 1.3, 0), (3, 1.0, 1), (0, 1.5, 2)])
def test_a_main_way_bends_twice_and_leads_straight(bends, detour, off):
    """Two bends and 1.3 times the straight line are free; layout rule 11, common practice, no source."""
    assert WayRun("door", "table", bends, detour).off == pytest.approx(off)


@pytest.mark.parametrize(("share", "over"), [(0.45, 0), (0.65, 0), (0.75, 192)])
def test_a_small_yard_bears_more_paving(share, over):
    """The plain yard has 1,920 sq ft open: 65 % may be paved; layout rule 13, common practice, no source."""
    assert overpaved_sqft(PLAIN_SITE, share) == pytest.approx(over)


def test_a_large_yard_bears_45_per_cent():
    """Without its house the plain yard has 2,400 sq ft."""
    assert overpaved_sqft(replace(PLAIN_SITE, buildings=()), 0.55) == pytest.approx(240)


@pytest.mark.parametrize(
    ("other", "line"),
    [
        ((12, 4, 20, 30), [(10, 5), (12, 5)]),  # beside each other over 4 to 6
        ((2, 9, 4, 12), [(3, 6), (3, 9)]),
        ((-8, -9, -3, -4), [(0, 0), (-3, -4)]),  # corner to corner
        ((10, 6, 12, 8), [(10, 6), (10, 6)]),
    ],
)
def test_the_middle_of_the_shortest_lines(other, line):
    """As long as the shortest, and in the middle of all that are, from either end."""
    one, two = box(0, 0, 10, 6), box(*other)
    assert list(middle_line(one, two).coords) == line
    assert list(middle_line(two, one).coords) == line[::-1]
    assert middle_line(one, two).length == one.distance(two)
