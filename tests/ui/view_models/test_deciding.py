"""The five figures that decide: each with its word, at and beyond the borders of the words."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import PartyMeasures
from optimizer.brief import Trip
from optimizer.catalogue import asked_by
from optimizer.concepts import LeftOut
from tests.sample_run import sample_option, sample_scenario
from ui.view_models import deciding, words_of

SCENARIO = sample_scenario()
WISHED = {room.name: room.sun.wished_h for room in SCENARIO.brief.rooms if room.sun is not None}


def figures(option=None, scenario=SCENARIO, **changes):
    """The figures by their label, of the made-up concept with some of its appraisal changed."""
    option = option or sample_option()
    option = replace(option, appraisal=replace(option.appraisal, **changes))
    return {figure.label: figure for figure in deciding(option, scenario, words_of(scenario))}


def walking(*trips):
    """The yard with these trips."""
    return replace(SCENARIO, brief=replace(SCENARIO.brief, trips=trips))


def costing(first):
    cost = sample_option().appraisal.cost
    return replace(cost, phases=((1, Decimal(first)), *cost.phases[1:]))


def test_there_are_five_in_the_order_of_the_talk():
    sun = tuple((room, hours, 0.0) for room, hours in WISHED.items())
    scenario = walking(Trip("a", "b", 4))
    assert [*figures(scenario=scenario, sun_h=sun, trips_ft=(("a", "b", 1.0),))] == [
        "Cost of phase 1",
        "Walking at one gathering",
        "Sun and shade as wished",
        "Seats at the party",
        "Wishes, and later",
    ]


@pytest.mark.parametrize(
    ("first", "grade"), [("117000", "good"), ("117001", "fair"), ("130000", "fair"), ("130001", "poor")]
)
def test_money_is_held_against_the_limit(first, grade):
    """Good up to 90 % of 130,000, poor above all of it."""
    figure = figures(cost=costing(first))["Cost of phase 1"]
    assert figure.grade == grade
    assert ("$1 over the all-in limit" in figure.why) == (grade == "poor")
    assert ("ithin 90 % of the all-in limit" in figure.why) == (grade == "good")
    assert ("13,000 above 90 % of the all-in limit" in figure.why) == (first == "130000")
    assert "." not in figure.value


def test_without_a_limit_money_has_no_word():
    free = replace(SCENARIO, brief=replace(SCENARIO.brief, budget=replace(SCENARIO.brief.budget, ceiling=None)))
    assert figures(scenario=free)["Cost of phase 1"].grade == ""


@pytest.mark.parametrize(("feet", "grade"), [(404, "good"), (406, "fair"), (804, "fair"), (806, "poor")])
def test_walking_goes_by_the_average_trip(feet, grade):
    """Ten trips: short up to 40 ft each, long beyond 80; by whole feet, as they are said."""
    ten = walking(Trip("a", "b", 4), Trip("b", "c", 6))
    figure = figures(scenario=ten, walking_ft=float(feet), trips_ft=(("a", "b", 1.0), ("b", "c", 1.0)))
    assert figure["Walking at one gathering"].grade == grade


def test_a_trip_that_nobody_walks_is_not_a_short_one():
    """Four trips of 100 ft are long, whatever six more to a room that is left out would be."""
    ten = walking(Trip("a", "b", 4), Trip("b", "c", 6))
    figure = figures(scenario=ten, walking_ft=400.0, trips_ft=(("a", "b", 100.0),))["Walking at one gathering"]
    assert (figure.grade, figure.why.split("; ")[0]) == ("poor", "100 ft a trip on average")
    assert figure.why.endswith(". Trips left out: b to c")
    assert figures(scenario=ten, walking_ft=0.0, trips_ft=())["Walking"].grade == ""


@pytest.mark.parametrize(
    ("missed", "grade"), [(0.0, "good"), (0.1, "good"), (0.11, "fair"), (0.4, "fair"), (0.41, "poor")]
)
def test_sun_goes_by_the_hours_that_were_wished_for(missed, grade):
    """The share that a room misses of its own wish."""
    room, hours = next(iter(WISHED.items()))
    figure = figures(sun_h=((room, 1.0, hours * missed * 0.9999),))["Sun and shade as wished"]
    assert figure.grade == grade
    assert (f"{room} misses" in figure.why) == bool(missed)


def test_nothing_is_said_of_sun_that_nobody_wished_for():
    assert "Sun and shade as wished" not in figures(sun_h=())


def test_seats_are_held_against_what_a_party_asks_for():
    asked = asked_by(SCENARIO.brief.guests)
    label = "Seats at the party"

    def grade(seats, without=0):
        return figures(party=PartyMeasures(people=asked.people, seats=seats, without=without))[label].grade

    assert (grade(asked.seats), grade(asked.seats - 1), grade(asked.people, without=1)) == ("good", "fair", "poor")


def test_what_is_left_out_and_what_stays_possible():
    """Nothing left out is good, one room fair, two poor."""
    for count, grade in ((0, "good"), (1, "fair"), (2, "poor")):
        out = tuple(LeftOut(name, "too dear") for name in ("fire feature", "quiet nook")[:count])
        figure = figures(replace(sample_option(), left_out=out, futures=()))["Wishes, and later"]
        assert figure.grade == grade
        assert ("fire feature" in figure.value) == bool(count)
