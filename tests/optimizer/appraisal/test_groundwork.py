"""What levels cost: steps, walls and earth as charges of the right room and phase."""

from dataclasses import replace
from decimal import Decimal

from optimizer.appraisal.groundwork import ground_measures, groundwork
from optimizer.grading import grade
from optimizer.layout import Layout, placed_of
from optimizer.site import SpotLevel
from tests.yards import PLAIN_SITE, plain_rooms, sized, stand

# A bank that falls 3 ft from y = 20 to y = 30, level above and below it.
BANK = tuple(SpotLevel((x, y), z) for x in (0, 60) for y, z in ((12.0, 0.9), (20.0, 0.9), (30.0, -2.1), (40.0, -2.1)))
SITE = replace(PLAIN_SITE, levels=BANK)
TWO = Layout((stand("table", 24, 16, 14, 12), stand("nook", 24, 28, 8, 7)))


def charges(layout=TWO, site=SITE):
    placed = placed_of(plain_rooms(), layout)
    grading = grade(site, placed)
    return grading, tuple(groundwork(grading, placed))


def test_steps_between_two_terraces():
    """One flight between the touching rooms; the one from the kitchen door to open ground is there already."""
    grading, lines = charges()
    flights = [flight for flight in grading.flights if set(flight.between) == {"table", "nook"}]
    assert len(flights) == 1
    steps = [line for line in lines if line.item == "steps"]
    assert [line.quantity for line in steps if line.room == "site"][-1] == flights[0].risers
    assert flights[0].risers >= 2


def test_steps_to_held_ground_are_built_at_once():
    """Ground that is held for a later phase is there from the first, and so are the steps to it."""
    held = replace(sized("nook", "reserve", 8, 7), phase=2)
    grading, _ = charges()
    lines = [line for line in groundwork(grading, placed_of(plain_rooms(held), TWO)) if line.item == "steps"]
    assert lines
    assert {line.phase for line in lines} == {1}


def test_earth_of_each_room():
    """Cut and fill of a room on a bank, as the grading measures them, rounded to the hundredth."""
    grading, lines = charges()
    earth = {line.item: line.quantity for line in lines if line.room == "table" and line.item.startswith("earth")}
    table = next(entry for entry in grading.earth if entry.room == "table")
    assert earth["earth cut"] == round(Decimal(repr(table.cut_bcy)), 2)
    assert earth["earth fill"] == round(Decimal(repr(table.fill_ccy)), 2)
    assert table.cut_bcy > 1


def test_level_ground_asks_for_nothing():
    flat = replace(PLAIN_SITE, levels=tuple(SpotLevel(at, 1.0) for at in ((0, 0), (60, 0), (60, 40), (0, 40))))
    _, lines = charges(site=flat)
    assert [line for line in lines if line.quantity] == []


def test_measures_add_up():
    grading, lines = charges()
    measures = ground_measures(grading)
    assert measures.risers == sum(line.quantity for line in lines if line.item == "steps")
    assert measures.cut_bcy == round(sum(entry.cut_bcy for entry in grading.earth), 2)
    assert dict(measures.levels).keys() == {"table", "nook"}


def test_without_levels_there_are_no_measures():
    assert ground_measures(grade(PLAIN_SITE, placed_of(plain_rooms(), TWO))) is None
