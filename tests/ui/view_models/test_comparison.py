"""Two concepts side by side."""

from dataclasses import replace

from optimizer.brief import Trip
from optimizer.concepts import Idea
from tests.sample_run import sample_scenario
from tests.ui.sample_concepts import sample_concepts
from ui.view_models import compare


def compared(first, second):
    """Comparison of two of the made-up concepts, by rank."""
    options = sample_concepts().options
    return compare(options[first - 1], options[second - 1], sample_scenario())


def test_what_differs_is_told_once_and_the_rest_is_the_same():
    """Rows are split by whether they differ; none is lost or in both."""
    shown = compared(1, 3)
    differing = {row.label: (row.first, row.second) for row in shown.differing}
    assert differing["Cost, phase 1"] == ("$7,900", "$2,100")
    assert differing["Fire feature"] == ("modest", "left out")
    assert differing["Gathering area"] == ("table for six", "table for eight")
    assert "Outdoor kitchen" in {row.label for row in shown.same}
    assert not set(differing) & {row.label for row in shown.same}


def test_rooms_that_moved_are_named_with_how_far():
    """The nook moved 65.1 ft between centres, the gathering area 3.0; the farthest is named first."""
    assert compared(1, 2).moved == ("quiet nook by 65 ft", "gathering area by 3 ft")


def test_ideas_are_compared_where_there_is_one():
    """By name; of two without an idea nothing is said."""
    options = sample_concepts().options
    named = replace(options[0], idea=Idea("beside the house", ""))
    rows = {row.label: (row.first, row.second) for row in compare(named, options[1], sample_scenario()).differing}
    assert rows["Idea"] == ("Beside the house", "none")
    shown = compared(1, 2)
    assert "Idea" not in {row.label for row in (*shown.differing, *shown.same)}


def test_walking_is_compared_on_trips_that_both_have():
    """Of the sum of unlike trips nothing is said; the trips that one lacks are named."""
    options, scenario = sample_concepts().options, sample_scenario()
    trips = (Trip("gate", "table", 10), Trip("table", "nook", 5))
    scenario = replace(scenario, brief=replace(scenario.brief, trips=trips))
    ways = ((("gate", "table", 20.0), ("table", "nook", 30.0)), (("gate", "table", 25.0),))
    both = [
        replace(option, appraisal=replace(option.appraisal, trips_ft=way, walking_ft=1.0))
        for option, way in zip(options, ways, strict=False)
    ]
    shown = compare(*both, scenario)
    rows = {row.label: (row.first, row.second) for row in (*shown.differing, *shown.same)}
    assert rows["Walking on trips that both have"] == ("200 ft", "250 ft")
    assert rows["Trips that the other lacks"] == ("table to nook", "none")
    assert "Walking" not in rows


def test_concept_against_itself_differs_in_nothing():
    """The same concept twice has no row that differs and no room that moved."""
    shown = compared(2, 2)
    assert (shown.differing, shown.moved) == ((), ())
