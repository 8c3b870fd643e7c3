"""Wishes to see and not to be seen."""

from dataclasses import replace

import pytest

from optimizer.appraisal import sight_missed
from optimizer.brief import Relation, RelationKind
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario

LEFT = Placement("tub", "c", 0, 0, 8, 8, "+y")
RIGHT = Placement("nook", "c", 52, 0, 8, 8, "+y")
ABOVE = Placement("nook", "c", 0, 25, 8, 8, "+y")


def missed(
    scenario: Scenario, kind: RelationKind, other: str, *placements: Placement, wish: float | None = 2.0
) -> tuple[tuple[str, str], ...]:
    """Wishes missed where the tub has one such wish towards another thing."""
    relation = Relation(("tub", other), kind, wish=wish)
    brief = replace(scenario.brief, relations=(relation,))
    return sight_missed(replace(scenario, brief=brief), Layout(placements))


def test_the_house_hides(scenario: Scenario) -> None:
    """From left of the house to right of it there is no view; from left to above there is."""
    assert missed(scenario, "in_view", "nook", LEFT, RIGHT) == (("tub", "nook"),)
    assert missed(scenario, "in_view", "nook", LEFT, ABOVE) == ()
    assert missed(scenario, "out_of_view", "nook", LEFT, RIGHT) == ()
    assert missed(scenario, "out_of_view", "nook", LEFT, ABOVE) == (("tub", "nook"),)


def test_what_stands_outside_hides_too(scenario: Scenario) -> None:
    """The neighbour's house hides the tub from the window behind it; nothing hides it from the west."""
    assert missed(scenario, "out_of_view", "east window", ABOVE, replace(LEFT, y_ft=28)) == ()
    assert missed(scenario, "out_of_view", "west window", replace(LEFT, y_ft=28)) == (("tub", "west window"),)


def test_a_building_does_not_hide_itself(scenario: Scenario) -> None:
    """The house is in view from beside it, although the line to its middle runs through it."""
    assert missed(scenario, "in_view", "house", LEFT) == ()


@pytest.mark.parametrize(("kind", "wish"), [("near", 2.0), ("in_view", None)])
def test_other_relations_are_not_wishes_about_sight(scenario: Scenario, kind: RelationKind, wish: float | None) -> None:
    """Hard relations, and wishes about anything else, are no matter of this measure."""
    assert missed(scenario, kind, "nook", LEFT, RIGHT, wish=wish) == ()


def test_a_room_left_out_misses_nothing(scenario: Scenario) -> None:
    """Where one end is not placed there is nothing to see."""
    assert missed(scenario, "in_view", "nook", LEFT) == ()
