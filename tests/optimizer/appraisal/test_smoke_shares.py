"""Smoke of a layout's fires and grills at openings and seats."""

from dataclasses import replace

import pytest

from optimizer.appraisal.smoke import smoke_loss_units, smoke_shares
from optimizer.brief import Equipment, RoomWish
from optimizer.fields import smoke_source
from optimizer.layout import placed_of
from optimizer.site import WindRose
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized, stand

NORTH_ONLY = WindRose((1.0,) + (0.0,) * 15)
WOOD = plain_rooms(sized("fire", "fire", 8, 8, fuel="wood"))


def shares(scenario, rooms=WOOD, layout=None):
    """Shares by source and place."""
    found = smoke_shares(scenario, placed_of(rooms, layout or plain_layout()))
    return {(entry.source, entry.place): entry.share for entry in found}


@pytest.fixture
def north_wind():
    """The plain yard with north wind all season: smoke blows to the house."""
    return on_site(plain_yard(), wind_rose=NORTH_ONLY)


def test_without_wind_nothing_is_said():
    """No wind data, no shares."""
    assert smoke_shares(plain_yard(), placed_of(WOOD, plain_layout())) == ()


def test_every_source_against_every_other_place(north_wind):
    """Two sources; two openings and three other rooms with seats for each; never the source itself."""
    found = shares(north_wind)
    assert set(found) == {
        (source, place)
        for source in ("fire", "cooker")
        for place in ("kitchen door", "bath window", "table", "cooker", "fire", "nook")
        if source != place
    }


def test_shares_of_the_plain_layout(north_wind):
    """The fire's middle (14, 26) lies 14 ft out and 6 aside of the door at (20, 12), 3 ft wide.

    Smoke goes south, give or take 22.5 degrees. The door's nearer end is 4.5 / 14 = 17.8 degrees off the axis, the
    sector of wind is 11.25 wide to each side: the smoke with wind from 17.8 - 22.5 degrees and up to 11.25 meets it.
    On the side of the fire that the wind comes from nothing is met: the nook at y 31 to 38.
    """
    found = shares(north_wind)
    assert found["fire", "kitchen door"] == pytest.approx((22.5 - 17.819 + 11.25) / 22.5, abs=1e-3)
    assert found["fire", "nook"] == 0
    assert found["cooker", "bath window"] == pytest.approx(1, abs=0.01)


def test_loss_counts_wood_more_than_gas(north_wind):
    """The same shares: wood counts 1, gas a tenth, a grill half."""
    found = smoke_shares(north_wind, placed_of(WOOD, plain_layout(without=("cooker",))))
    total = sum(entry.share for entry in found)
    assert total > 0.5
    assert smoke_loss_units(north_wind.brief, WOOD, found) == pytest.approx(total)
    assert smoke_loss_units(north_wind.brief, plain_rooms(), found) == pytest.approx(0.1 * total)
    grill = smoke_shares(north_wind, placed_of(WOOD, plain_layout(without=("fire",))))
    assert smoke_loss_units(north_wind.brief, WOOD, grill) == pytest.approx(0.5 * sum(entry.share for entry in grill))


def test_gas_reaches_less_far(north_wind):
    """The door 14.2 ft from the fire's middle is out of a gas fire's reach of 10."""
    assert shares(north_wind, plain_rooms())["fire", "kitchen door"] == 0


def test_rooms_without_seats_are_no_places(north_wind):
    """A bed nobody sits in is not counted, though smoke lies on it."""
    bed = sized("roses", "bed", 6, 3)
    bare = replace(bed, choices=(replace(bed.choices[0], seats=0),))
    layout = plain_layout(stand("roses", 11, 15, 6, 3))
    assert ("fire", "roses") not in shares(north_wind, plain_rooms(bare), layout)
    assert ("fire", "roses") in shares(north_wind, plain_rooms(bed), layout)


@pytest.mark.parametrize(
    ("equipment", "source"), [((), "grill"), (("sink",), None), (("sink", "Pizza oven"), "grill"), (("tandoor",), None)]
)
def test_a_kitchen_smokes_where_something_is_hot(equipment, source):
    """A kitchen for which nothing is named has a grill; what the catalogue does not know is not hot."""
    cooker = plain_rooms()[1]
    wish = RoomWish("cooker", "kitchen", equipment=tuple(Equipment(name) for name in equipment))
    scenario = plain_yard()
    scenario = replace(scenario, brief=replace(scenario.brief, rooms=(wish,)))
    assert smoke_source(scenario.brief, cooker) == source
    assert smoke_source(scenario.brief, sized("table", "gathering", 14, 12)) is None


def test_a_fire_of_unknown_fuel_burns_gas():
    """As the check of distances takes it."""
    assert smoke_source(plain_yard().brief, sized("fire", "fire", 8, 8)) == "gas"
