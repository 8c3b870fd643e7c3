"""Backs of a room among random beds: more of them never give fewer, and a turned plan has as many."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, affinity, box

from optimizer.appraisal.enclosure import enclosure_measures
from optimizer.grading import Grading
from optimizer.layout import Layout, placed_of
from optimizer.planting import Bed, planting_of
from tests.yards import PLAIN_SITE, sized, stand

SITE = replace(PLAIN_SITE, buildings=(), structures=(), surroundings=())
ROOM = sized("nook", "nook", 10, 8)
PLACE = stand("nook", -5, -4, 10, 8)
FLAT = Grading(is_known=False, levels_ft=(), flights=(), walls=(), guards=(), earth=(), falls=())
PLANTED = planting_of(SITE, (), placed_of((), Layout(())), Polygon())
PLACES, LENGTHS = st.integers(-14, 12), st.integers(1, 12)
BEDS = st.lists(
    st.builds(lambda x, y, along, up: box(x, y, x + along, y + up), PLACES, PLACES, LENGTHS, LENGTHS), max_size=5
)


def backs(beds) -> int:
    """Backed sides of a room of 10 x 8 ft about the origin."""
    planting = replace(PLANTED, beds=tuple(Bed(bed, "between rooms") for bed in beds))
    (room,) = enclosure_measures(SITE, placed_of((ROOM,), Layout((PLACE,))), FLAT, planting).rooms
    return room.backed


@given(BEDS)
def test_more_beds_never_give_fewer_backs(beds):
    """Without one of the beds no more sides are backed, without any none; never more than four."""
    assert backs(beds[1:]) <= backs(beds) <= 4
    assert backs(()) == 0


@given(BEDS)
def test_a_turned_or_mirrored_plan_has_as_many(beds):
    """By half a turn about the room's middle, and mirrored."""
    turned = [affinity.rotate(bed, 180, origin=(0, 0)) for bed in beds]
    mirrored = [affinity.scale(bed, -1, 1, origin=(0, 0)) for bed in beds]
    assert backs(turned) == backs(beds) == backs(mirrored)


@given(st.integers(0, 8))
def test_a_bed_gives_a_back_within_4_ft(away):
    """A bed along the upper edge, so many feet beyond it."""
    assert backs([box(-5, 4 + away, 5, 6 + away)]) == (1 if away <= 4 else 0)
