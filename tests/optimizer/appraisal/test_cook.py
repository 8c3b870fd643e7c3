"""What the kitchen's plan means to who cooks, on a kitchen drawn by hand."""

from dataclasses import replace
from math import atan, degrees

import pytest

from optimizer.appraisal import cook_loss
from optimizer.appraisal.cook import plain_measures
from optimizer.catalogue import Item, rates
from optimizer.circulation import Way
from optimizer.layout import Layout, placed_of
from tests.yards import sized, stand

# Serving to +y: bar along the front edge at y = 6, grill at the left, sink and refrigerator along the bar.
KITCHEN = replace(
    sized("cooker", "kitchen", 10, 8),
    choices=(
        replace(
            sized("cooker", "kitchen", 10, 8).choices[0],
            furniture=(
                Item("grill", 0, 0, 2, 2),
                Item("sink", 3, 4, 2, 2),
                Item("refrigerator", 7, 4, 2, 2),
                Item("ledge", 0, 6, 10, 1),
            ),
        ),
    ),
)
TABLE = replace(
    sized("table", "gathering", 14, 12),
    choices=(replace(sized("table", "gathering", 14, 12).choices[0], furniture=(Item("table", 3, 4, 8, 4),)),),
)


def measured(table_y, *ways):
    """Kitchen from (20, 0) to (30, 8), table's room so far up."""
    return with_table(KITCHEN, table_y, *ways)


def with_table(kitchen, table_y, *ways):
    """Measures of a kitchen with no site, the table's room before it."""
    spots = (stand("cooker", 20, 0, 10, 8), stand("table", 18, table_y, 14, 12))
    placed = placed_of((kitchen, TABLE), Layout(spots))
    return plain_measures(placed.rooms[0], placed, ways)


def test_the_way_of_a_dish():
    """From the grill's middle 5 ft to the bar and from the bar at y = 7 to the table at y = 12, 5 ft on.

    The table's middle lies 9 ft before the counter's, (26, 5), and 1 ft aside.
    """
    found = measured(8)
    assert found.to_table_ft == pytest.approx(5)
    assert found.dish_ft == pytest.approx(5 + 5)
    assert found.angle_deg == pytest.approx(degrees(atan(1 / 9)), abs=0.05)
    assert found.off_ft == 0


def test_the_work_goes_round_three_places():
    """Fronts of grill (2, 1), sink (4, 4), refrigerator (8, 4): sides of root 13, 4 and root 45."""
    assert measured(8).work_ft == pytest.approx(13**0.5 + 4 + 45**0.5, abs=0.02)


@pytest.mark.parametrize(("table_y", "off"), [(8, 0), (15, 0), (18, 3)])
def test_handy_from_5_to_12_ft(table_y, off):
    """Within 5 to 12 ft from bar to table nothing is lost, beyond every foot; layout rule 3, common practice."""
    found = measured(table_y)
    assert found.off_ft == pytest.approx(off)
    assert cook_loss((found,)) == pytest.approx(rates().cook * off)


def test_guests_across_the_way_of_a_dish():
    """A way of others between bar and table is named and costs; the cook's own trip does not."""
    across = ((10.0, 9.0), (40.0, 9.0))
    assert measured(8, Way(("gate", "nook"), 4, across, 30)).crossed_by == (("gate", "nook"),)
    assert measured(8, Way(("gate", "table"), 4, across, 30)).crossed_by == ()
    assert measured(8, Way(("gate", "nook"), 4, across, 30)).off_ft == 5


def test_a_kitchen_without_guests():
    """Where there is no gathering only the work is measured."""
    placed = placed_of((KITCHEN,), Layout((stand("cooker", 20, 0, 10, 8),)))
    found = plain_measures(placed.rooms[0], placed, ())
    assert (found.gathering, found.to_table_ft, found.dish_ft, found.off_ft) == (None, None, None, 0)


def test_a_counter_without_a_bar():
    """Where nobody sits the way to the table begins at the counter's front edge, y = 6, not at the room's front."""
    counter = replace(KITCHEN.choices[0], furniture=KITCHEN.choices[0].furniture[:-1])
    found = with_table(replace(KITCHEN, choices=(counter,)), 8)
    assert found.to_table_ft == pytest.approx(6)
