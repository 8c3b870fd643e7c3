"""The everyday table: which room has it, and the way to it from the door that serves it."""

from dataclasses import replace

import pytest

from optimizer.appraisal.table import TableWay, main_table, serving_door, table_way
from optimizer.brief import Trip
from optimizer.catalogue import Item
from optimizer.derived import Derived
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Door, SpotLevel
from tests.yards import on_site, plain_rooms, plain_yard, sized, stand

HOUSE = Building(
    "house",
    ((10, 0), (50, 0), (50, 12), (10, 12)),
    floor_z_ft=1.0,
    doors=(Door("kitchen door", (20, 12), 3, (0, 1)), Door("hall door", (40, 12), 3, (0, 1))),
)
YARD = on_site(plain_yard(ceiling=None), buildings=(HOUSE,), structures=())


def placed(*placements, rooms=None):
    """A layout of the plain rooms."""
    return placed_of(plain_rooms() if rooms is None else rooms, Layout(placements))


def test_the_way_runs_from_the_door_to_the_middle_of_the_table():
    """Straight ahead of the door, 18 ft to the middle; steps are not known where the ground is not."""
    found = table_way(Derived(YARD, placed(stand("table", 13, 24, 14, 12))))
    assert found == TableWay("table", "kitchen door", pytest.approx(18.0), None)


def test_risers_are_counted_where_levels_are_known():
    """A flat yard 1 ft below the floor: two risers."""
    corners = ((0, 0), (60, 0), (60, 40), (0, 40))
    scenario = on_site(YARD, levels=tuple(SpotLevel(at, 0.0) for at in corners))
    assert table_way(Derived(scenario, placed(stand("table", 13, 24, 14, 12)))).risers == 2


def test_the_door_is_that_of_the_kitchen_whether_it_is_there_or_not():
    """Named by a trip; else by most trips in all, where there is no kitchen to serve."""
    table = stand("table", 13, 24, 14, 12)
    by_hall = replace(
        YARD, brief=replace(YARD.brief, trips=(Trip("hall door", "cooker", 1), Trip("kitchen door", "nook", 9)))
    )
    assert serving_door(by_hall, placed(table)).name == "hall door"
    no_kitchen = tuple(room for room in plain_rooms() if room.rules.kind != "kitchen")
    assert serving_door(by_hall, placed(table, rooms=no_kitchen)).name == "kitchen door"
    silent = replace(YARD, brief=replace(YARD.brief, trips=()))
    # Nearest to where the kitchen stands.
    assert serving_door(silent, placed(table, stand("cooker", 38, 18, 6, 8))).name == "hall door"
    assert serving_door(silent, placed(table)) is None
    assert table_way(Derived(silent, placed(table))) == TableWay("table", None, None, None)


def test_the_table_is_the_one_with_most_chairs():
    """Of two gatherings; the first of as many, and none without a gathering."""
    lounge, supper = sized("table", "gathering", 14, 12), sized("supper", "gathering", 14, 12)
    chairs = tuple(Item("chair", x, 0, 1, 1, seats=1) for x in (2, 4))
    laid = replace(supper, choices=(replace(supper.choices[0], furniture=chairs),))
    both = (stand("table", 13, 24, 14, 12), stand("supper", 30, 24, 14, 12))
    assert main_table(placed(*both, rooms=(lounge, laid))).name == "supper"
    assert main_table(placed(*both, rooms=(lounge, supper))).name == "table"
    assert main_table(placed(stand("fire", 30, 24, 8, 8))) is None
    assert table_way(Derived(YARD, placed(stand("fire", 30, 24, 8, 8)))) is None


def test_a_table_that_cannot_be_reached_has_no_length():
    """Walled in by rooms that nobody walks on."""
    rooms = plain_rooms(sized("shed", "storage", 60, 2))
    found = table_way(Derived(YARD, placed(stand("table", 13, 27, 14, 12), stand("shed", 0, 20, 60, 2), rooms=rooms)))
    assert found == TableWay("table", "kitchen door", None, None)
