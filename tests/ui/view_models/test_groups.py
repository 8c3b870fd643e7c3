"""What was measured of a concept, in words and by what it is about."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import CookMeasures, Landing, OrderMeasures, PathMeasures, TableWay, WayRun, WorkZone
from optimizer.appraisal.enclosure import EnclosureMeasures, RoomBacks
from optimizer.appraisal.party.measures import PartyMeasures, PartyPhase, Pinch, Remedy
from optimizer.planting import PlantingMeasures
from tests.sample_run import sample_option
from ui.view_models.groups import figure_groups
from ui.view_models.words import Words

FEET, METRES = Words("USD", "ft"), Words("AUD", "m")
APPRAISAL = sample_option().appraisal


def said(appraisal, heading, words=FEET):
    """Figures of one group, by label."""
    groups = {group.heading: group.figures for group in figure_groups(appraisal, words)}
    return {figure.label: (figure.value, figure.meaning) for figure in groups.get(heading, ())}


def test_a_kitchen_in_words():
    """Bar, dish and angle are said in the scenario's units, and who crosses by name."""
    cook = CookMeasures("cooker", 15.02, "table", 14.04, 8.5, 12.0, (("gate", "nook"),))
    found = said(replace(APPRAISAL, cook=(cook,)), "The cook")
    assert found["Bar to table"][0] == "8 ft"
    assert found["Looks at the table"][0] == "14°"
    assert found["Crossed by"][0] == "gate to nook"
    assert said(replace(APPRAISAL, cook=(cook,)), "The cook", METRES)["From grill to table"][0] == "3.7 m"


def test_the_way_to_the_table_in_words():
    """Length and steps from its door; steps only where levels are known, nothing where no way is."""
    found = said(replace(APPRAISAL, table=TableWay("table", "kitchen door", 23.9, 2)), "Ways")
    assert found["Everyday table"] == ("24 ft", "on foot from the kitchen door, 2 steps up or down")
    flat = said(replace(APPRAISAL, table=TableWay("table", "kitchen door", 23.9, None)), "Ways")
    assert flat["Everyday table"][1] == "on foot from the kitchen door"
    assert "Everyday table" not in said(replace(APPRAISAL, table=TableWay("table", None, None, None)), "Ways")


def test_a_counter_in_words():
    """What is short, near or seen is said; what is as it should be is not."""
    zone = WorkZone((("sink", "refrigerator", 3.0),), (Landing("sink", (18, 24), (0, 60)),))
    cook = CookMeasures("cooker", 15.02, zone=zone, past_stools_ft=3.67, watches=(("fire", 0.75),))
    found = said(replace(APPRAISAL, cook=(cook,)), "The cook")
    assert found["Sink to refrigerator"] == ("3 ft", "handy from 4 ft to 9 ft")
    assert found["Little counter"][0] == "sink"
    assert found["Past the stools"][0] == "4 ft"
    assert found["The cook sees, fire"][0] == "75%"
    plain = said(replace(APPRAISAL, cook=(CookMeasures("cooker", 15.02),)), "The cook")
    assert list(plain) == ["Work"]


def test_backs_are_counted_beside_what_is_asked():
    """A room with more backs than asked for has no share of them: 3, where 1 is asked for."""
    enclosure = EnclosureMeasures((RoomBacks("table", wanted=1, backed=3), RoomBacks("nook", wanted=2, backed=1)), ())
    found = said(replace(APPRAISAL, enclosure=enclosure), "Order")
    assert found["Back, table"] == ("3", "sides with a wall, bed or hedge behind; 1 wanted")
    assert found["Back, nook"][1].endswith("2 wanted")


def test_no_kitchen_no_group():
    """A heading without figures does not appear."""
    assert said(replace(APPRAISAL, cook=()), "The cook") == {}


def test_ways_in_words():
    """Paved area, bends and detour of each main way."""
    paths = PathMeasures(541.2, 110.0, (WayRun("door", "table", 1, 1.234), WayRun("gate", "table", 0, 1.0)))
    found = said(replace(APPRAISAL, paths=paths), "Ways")
    assert found["Paved ways"] == ("541 sq ft", "on 110 ft of centre line")
    assert found["door to table"] == ("1 bend", "1.2 times the straight line")
    assert found["gate to table"][0] == "straight"


@pytest.mark.parametrize(("units", "lawn"), [(FEET, "1,076 sq ft"), (METRES, "100 m²")])
def test_planting_in_words(units, lawn):
    """Beds by reason, lawn with its largest rectangle, in the scenario's units."""
    planting = PlantingMeasures((("along the house", 120.0),), 1076.4, (40.0, 20.0), 30.0, 0.004, 0.021, 614.0)
    found = said(replace(APPRAISAL, planting=planting), "Beds and lawn", units)
    assert found["Lawn"][0] == lawn
    assert "Beds, along the house" in found
    assert found["Lawn"][1].endswith("74% of it")
    assert "pays for" in found["Beds in all"][1]
    assert found["Too narrow or small for lawn"][0] == "2%"


def test_what_is_out_of_order():
    """Only what is out of order is said, besides the aligned share and the near misses."""
    found = said(replace(APPRAISAL, order=OrderMeasures(off_structure_ft=3.0, off_axis=1, centred=("table",))), "Order")
    assert found["Centred"][0] == "table"
    assert found["Off the structure"][0] == "3 ft"
    assert found["Fire"][0] == "off centre"
    assert "Fire" not in said(replace(APPRAISAL, order=OrderMeasures()), "Order")


def test_an_empty_roof_is_said():
    """By its name; nothing where it is used."""
    found = said(replace(APPRAISAL, empty_roofs=("old arbour",)), "Order")
    assert found["Under the old arbour"] == ("no room", "the roof that stands there already is not used")
    assert not [label for label in said(APPRAISAL, "Order") if label.startswith("Under")]


def test_the_party_in_words():
    """Guests, where they are in each part of the evening, the tightest place and what would ease it."""
    party = PartyMeasures(
        people=24,
        seats=20,
        standing_sqft=90.0,
        without=2,
        phases=(PartyPhase("eat", (("table", 16), ("fire", 8), ("nook", 0))),),
        worst=Pinch(("table", "fire"), "way", 3.0, "eat", 2.5, "A"),
        remedy=Remedy("widen the way to 4 ft", Decimal("640.00")),
    )
    found = said(replace(APPRAISAL, party=party), "The party")
    assert found["Guests"] == ("24", "on 20 seats and 90 sq ft to stand on")
    assert found["Without a place"][0] == "2"
    assert found["Eat"] == ("24", "table 16 and fire 8")
    assert found["Narrowest place"][0] == "3 ft way"
    assert found["What would ease it"] == ("$640", "widen the way to 4 ft")
