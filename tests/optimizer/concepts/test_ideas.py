"""What makes each idea: a layout that has it, and one that just has not.

The thresholds are layout rules 8 (15 ft), 17 (1 ft), 27 (85 %) and 30 (40 ft, 3 risers); the others are common
practice, no source.
"""

from dataclasses import replace

import pytest

from optimizer.appraisal import GroundMeasures, SiteMeasures, TableWay
from optimizer.brief import Trip
from optimizer.catalogue import IDEAS, TIES
from optimizer.concepts.ideas import TESTS, TIE_TESTS, TIED, Plan, idea_name, tie_of
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Door, Structure, Tree, Window
from tests.sample_run import sample_option
from tests.yards import bathing, on_site, plain_rooms, plain_yard, sized, stand

# The house is 40 ft wide and 20 ft deep; its door looks up the plan at x 40, its window at x 55.
HOUSE = Building(
    "house",
    ((20, 0), (60, 0), (60, 20), (20, 20)),
    doors=(Door("garden door", (40, 20), 6, (0, 1)),),
    windows=(Window("window", (55, 20), 4, (0, 1)),),
)
ROOF = Structure("old roof", ((64, 40), (80, 40), (80, 52), (64, 52)), may_hold=("table", "cooker"))
SITE = {
    "boundary": ((0, -40), (120, -40), (120, 100), (0, 100)),
    "buildings": (HOUSE,),
    "structures": (ROOF,),
    "trees": (),
}
YARD = on_site(plain_yard(ceiling=None), **SITE)
YARD = replace(YARD, brief=replace(YARD.brief, trips=(Trip("garden door", "table", 20),)))
ROOMS = plain_rooms(sized("pond", "reserve", 8, 8), bathing("pool"))


def plan(*placements, levels=(), way=None, scenario=YARD):
    """A layout with levels of its rooms and the way to its table."""
    ground = GroundMeasures(levels=levels) if levels else None
    appraisal = replace(sample_option().appraisal, site=SiteMeasures(ground=ground), table=way)
    return Plan(scenario, placed_of(ROOMS, Layout(placements)), appraisal)


def table(x, y=24.0):
    """A table of 14 x 12 ft; 4 ft off the house where nothing is said."""
    return stand("table", x, y, 14, 12)


def fire(x, y):
    """A fire of 8 x 8 ft."""
    return stand("fire", x, y, 8, 8)


def nook(x, y):
    """A nook of 8 x 7 ft."""
    return stand("nook", x, y, 8, 7)


WATER = stand("pool", 22, 52, 16, 18)
COURT = (table(22), stand("cooker", 36, 24, 8, 6))


@pytest.mark.parametrize(
    ("idea", "has", "has_not"),
    [
        # Water of 8 x 6 ft, 4 ft inside its room: its edge at y 56, 12 ft from fire and table; the deck does not count.
        ("round the water", (table(22, 32), fire(30, 36), WATER), (table(22, 31.9), fire(30, 36), WATER)),
        ("round the water", (table(22, 32), fire(30, 36), WATER), (table(22, 32), fire(30, 35.9), WATER)),
        ("round the water", (table(22, 32), fire(22, 60), WATER), (table(22, 32), WATER)),
        # The fire 12 ft from the table.
        ("one court at the house", (*COURT, fire(22, 48)), (*COURT, fire(22, 48.1))),
        # The table 12 ft from the house.
        ("one court at the house", (table(22, 32), fire(22, 48)), (table(22, 32.1), fire(22, 48))),
        # A table alone is no court.
        ("one court at the house", COURT, COURT[:1]),
        # The fire 15 ft from the table; the nook, that far aside, 20 ft from the house.
        ("a court and a garden room", (*COURT, fire(22, 51)), (*COURT, fire(22, 50.9))),
        ("a court and a garden room", (*COURT, nook(52, 40)), (*COURT, nook(52, 39.9))),
        ("out in the garden", (table(22, 40),), (table(22, 39.9),)),
        # 85 % of the table's 168 sq ft are 11.9 of its 14 ft.
        ("under the old roof", (table(61.9, 40),), (table(61.8, 40),)),
        # Of a table larger than the roof 85 % of the roof's 192 sq ft: 13.6 of its 16 ft.
        (
            "under the old roof",
            (stand("table", 50, 38, 27.6, 20),),
            (stand("table", 50, 38, 27.5, 20),),
        ),
        # A kitchen under the roof is enough, a fire is not.
        ("under the old roof", (table(22), stand("cooker", 70, 42, 8, 6)), (table(22), fire(70, 42))),
        # The middle no farther out than the front wall, and no farther back than the rear one; 12 ft from the house.
        ("beside the house", (table(62, 14),), (table(62, 14.1),)),
        ("beside the house", (table(62, -6),), (table(62, -6.1),)),
        ("beside the house", (table(72, 5),), (table(72.1, 5),)),
        ("beside the house", (table(4, 5),), (table(22, -12),)),
        # Middles 1 ft off the line of the door at x 40, on either side; and the fire as near.
        ("along one axis", (table(34), fire(36, 60)), (table(34.1), fire(36, 60))),
        ("along one axis", (table(32), fire(36, 60)), (table(31.9), fire(36, 60))),
        ("along one axis", (table(33), fire(37, 60)), (table(33), fire(37.1, 60))),
        # Of a pool with its deck the middle of the water counts, which lies behind that of the deck.
        (
            "along one axis",
            (table(33), stand("pool", 32, 60, 18, 16, "+x")),
            (table(33), stand("pool", 30, 60, 18, 16, "+x")),
        ),
        # Of the window too, but not one of each; and held ground for water ends a line, a kitchen does not.
        ("along one axis", (table(48), fire(51, 60)), (table(48), fire(36, 60))),
        (
            "along one axis",
            (table(33), stand("pond", 36, 60, 8, 8)),
            (table(33), stand("cooker", 36, 60, 8, 6)),
        ),
        # On a line, but 12.1 ft from the house.
        ("along one axis", (table(33, 32), fire(36, 60)), (table(33, 32.1), fire(36, 60))),
        # Fire 12 ft from the house, and too far from the table for a court.
        ("in a row along the house", (*COURT, fire(52, 32)), (*COURT, fire(52, 32.1))),
    ],
)
def test_what_has_an_idea_and_what_just_has_not(idea, has, has_not):
    """The facts decide, to a tenth of a foot."""
    assert idea_name(plan(*has)) == idea
    assert idea_name(plan(*has_not)) != idea


LEVELS = (("table", 0.0), ("nook", -1.0), ("fire", -2.0))


@pytest.mark.parametrize(
    ("levels", "idea"),
    [
        (LEVELS, "stepping down"),
        # One of the two steps is an inch short; the lower two are one terrace; one is above the table.
        ((*LEVELS[:2], ("fire", -1.9)), "a court and a garden room"),
        ((LEVELS[0], ("nook", -0.9), ("fire", -1.8)), "a court and a garden room"),
        ((LEVELS[0], ("nook", 1.0), ("fire", -1.0)), "a court and a garden room"),
        ((), "a court and a garden room"),
    ],
)
def test_three_levels_that_go_down_step_down(levels, idea):
    """Each a foot below the one before, the table's first."""
    assert idea_name(plan(table(22), nook(22, 40), fire(22, 60), levels=levels)) == idea


ROOFED, ASIDE, AWAY = table(64, 40), table(62, 4), table(22, 40)


@pytest.mark.parametrize(
    ("idea", "place"), [("under the old roof", ROOFED), ("beside the house", ASIDE), ("out in the garden", AWAY)]
)
@pytest.mark.parametrize(
    ("off_ft", "tie"), [(12.0, "in one court"), (12.1, None), (14.9, None), (15.0, "with a garden room")]
)
def test_where_the_place_is_the_idea_what_ties_the_rest_tells_too(idea, place, off_ft, tie):
    """A fire as near as a court, as far as a room of its own, and between the two; it lies out in the garden."""
    found = plan(place, fire(place.right_ft + off_ft, place.y_ft))
    assert idea_name(found) == idea
    assert tie_of(found, idea) == tie


def test_other_ideas_name_the_tie_themselves():
    """A table at the house is a court or has a garden room, and is not called so twice."""
    for idea in set(IDEAS) - TIED:
        assert tie_of(plan(ROOFED, fire(64, 64)), idea) is None


def test_a_tree_ends_a_line():
    """One that stands on it."""
    for x, idea in ((41, "along one axis"), (41.1, "one court at the house")):
        scenario = on_site(YARD, trees=(Tree("pear", (x, 70), 1, 6),))
        found = plan(table(33), stand("cooker", 47, 24, 8, 6), scenario=scenario)
        assert idea_name(found) == idea


@pytest.mark.parametrize(
    ("on_foot_ft", "risers", "has"),
    [(40.0, 3, True), (40.1, 3, False), (40.0, 4, False), (None, None, True)],
)
def test_in_every_idea_the_table_is_handy(on_foot_ft, risers, has):
    """Within 40 ft on foot and three risers of the kitchen door, as far as that is known."""
    way = TableWay("table", "garden door", on_foot_ft, risers)
    assert (idea_name(plan(*COURT, way=way)) is not None) == has


def test_without_a_table_or_a_house_there_is_none():
    """An idea is told by where the table stands to the house."""
    assert idea_name(plan(fire(22, 40))) is None
    assert idea_name(plan(*COURT, scenario=on_site(YARD, buildings=()))) is None


def test_a_shed_is_no_house():
    """Where a building has a door, one without is a thing in the garden."""
    shed = Building("shed", ((22, 53), (30, 53), (30, 60), (22, 60)))
    scenario = on_site(YARD, buildings=(HOUSE, shed))
    assert idea_name(plan(table(22, 40), scenario=scenario)) == "out in the garden"


def test_every_idea_has_a_test():
    """In the one order of telling."""
    assert tuple(TESTS) == IDEAS
    assert tuple(TIE_TESTS) == TIES


def test_water_that_comes_later_is_no_idea():
    """Of a later phase the yard has only the place."""
    later = tuple(replace(room, phase=2) if room.name == "pool" else room for room in ROOMS)
    found = plan(table(22, 32), fire(30, 36), WATER)
    assert idea_name(found) == "round the water"
    assert idea_name(replace(found, placed=placed_of(later, found.placed.layout))) != "round the water"
