"""Ideas in words for an owner: places by name, lengths in the scenario's units."""

from dataclasses import replace

import pytest

from optimizer.concepts import Idea, idea_of
from optimizer.site import Building, Door, Structure, Tree
from tests.optimizer.concepts.test_ideas import LEVELS, WATER, YARD, fire, nook, plan, table
from tests.yards import on_site, stand

OAK = on_site(YARD, trees=(Tree("red oak", (26, 70), 1, 6),))
COOKER = stand("cooker", 36, 24, 8, 6)


@pytest.mark.parametrize(
    ("placements", "words"),
    [
        (
            (table(22), COOKER, fire(22, 48)),
            "one court outside the garden door: the table, the cooker and the fire close together",
        ),
        (
            (table(22), nook(22, 60)),
            "a court outside the garden door, and the nook out in the garden by the red oak",
        ),
        ((table(22), nook(60, 60)), "a court outside the garden door, and the nook out in the garden"),
        ((table(22, 60),), "the table out in the garden by the red oak, 40 ft from the house"),
        ((table(60, 60),), "the table out in the garden, 40 ft from the house"),
        ((table(64, 40),), "the table under the old roof"),
        (
            (table(64, 40), nook(22, 60)),
            "the table under the old roof, the nook out in the garden by the red oak",
        ),
        (
            (table(64, 40), fire(66, 60)),
            "the table under the old roof, the fire close to the table",
        ),
        ((table(22, 32), fire(30, 36), WATER), "the table and the fire round the pool"),
        ((table(62, 4),), "the table beside the house, round the corner from the garden door"),
        ((table(33), fire(36, 80)), "the table and the fire in one line, straight out from the garden door"),
        (
            (table(22), COOKER, fire(52, 30)),
            "the table, the cooker and the fire in a row along the house",
        ),
    ],
)
def test_what_a_plan_is_like(placements, words):
    """Each idea in its own words."""
    found = plan(*placements, scenario=OAK)
    assert idea_of(OAK, found.placed, found.appraisal).words == words


def test_steps_down_say_how_far():
    """From the table's level, in the scenario's units."""
    found = plan(table(22), nook(22, 40), fire(22, 60), levels=LEVELS)
    words = "terraces that step down the slope, from the table down to the nook and fire"
    assert idea_of(YARD, found.placed, found.appraisal) == Idea("stepping down", f"{words}, 2.0 ft in all")
    metric = replace(YARD, units="m")
    assert idea_of(metric, found.placed, found.appraisal).words == f"{words}, 0.6 m in all"


def test_a_table_under_a_roof_may_step_down_too():
    """The idea is the roof; what ties the rest to it is a further part of its name."""
    found = plan(table(64, 40), nook(64, 60), fire(64, 80), levels=LEVELS)
    words = "the table under the old roof, terraces down to the nook and fire, 2.0 ft in all"
    assert idea_of(YARD, found.placed, found.appraisal) == Idea("under the old roof, stepping down", words)


def test_at_the_house_is_said_where_nothing_tells_more():
    """A court 10 ft from the house, away from its door, is not out in the garden."""
    house = Building("house", ((20, 0), (60, 0), (60, 20), (20, 20)), doors=(Door("garden door", (55, 20), 6, (0, 1)),))
    yard = on_site(YARD, buildings=(house,), structures=())
    found = plan(table(22, 30), fire(22, 44), scenario=yard)
    assert idea_of(yard, found.placed, found.appraisal).words.startswith("one court at the house: ")


def test_two_rooms_under_one_roof_are_both_told():
    """Those under the first structure that holds any."""
    yard = on_site(YARD, structures=(Structure("pergola", ((64, 40), (90, 40), (90, 60), (64, 60))),))
    found = plan(table(64, 40), stand("cooker", 78, 40, 8, 6), scenario=yard)
    assert idea_of(yard, found.placed, found.appraisal).words == "the table and the cooker under the pergola"


def test_no_idea_has_no_words():
    """A table neither here nor there."""
    found = plan(table(22, 36))
    assert idea_of(YARD, found.placed, found.appraisal) is None
