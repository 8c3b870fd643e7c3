"""Steps: what the foot of a flight keeps clear of, how flights are built, and how level the kitchen lies."""

from dataclasses import replace

import pytest

from optimizer.catalogue import Item
from optimizer.check.case import CheckCase
from optimizer.check.steps import kitchen_level, steps_at_doors, steps_clear
from optimizer.derived import Derived
from optimizer.grading import Flight
from optimizer.layout import Layout, placed_of
from optimizer.site import SpotLevel
from tests.yards import KEPT, on_site, plain_layout, plain_rooms, plain_yard, sized, stand


def furnished(*items):
    """The plain rooms with this furniture at the table."""
    room = sized("table", "gathering", 14, 12)
    return plain_rooms(replace(room, choices=(replace(room.choices[0], furniture=items),)))


def on_slope(rear_ft):
    """The plain yard, 0.9 ft high at the house and so high at the rear boundary."""
    spots = (((0, 12), 0.9), ((60, 12), 0.9), ((0, 40), rear_ft), ((60, 40), rear_ft))
    return on_site(plain_yard(), levels=tuple(SpotLevel(at, z) for at, z in spots))


@pytest.mark.parametrize(
    ("item", "words"),
    [
        # The steps from the kitchen door to the ground end at (20, 17.17), 3 ft wide; the table's room begins at (24, 16).
        (Item("chair", 0.4, 0, 2, 2, seats=1), ["2.90 ft from a seat of table, at least 3.00 ft"]),
        (Item("chair", 0.5, 0, 2, 2, seats=1), []),
        (Item("low table", 0, 0, 2, 2), []),
        (Item("fire pit", 2.4, 0, 2, 2), ["4.90 ft from a flame of table, at least 5.00 ft"]),
        (Item("fire pit", 2.5, 0, 2, 2), []),
    ],
)
def test_what_the_foot_of_a_doors_steps_keeps_clear_of(item, words):
    """Seats by 3 ft, flames by 5, measured from the end of the bottom riser; a low table is neither."""
    found = [
        finding.words
        for finding in steps_clear(CheckCase(Derived(plain_yard(), placed_of(furnished(item), plain_layout()))))
    ]
    assert len(found) == len(words)
    assert all(told in text for told, text in zip(words, found, strict=True))


def test_nobody_is_hindered_on_the_upper_level():
    """A chair behind the top riser stands above the steps, however near."""
    chair = Item("chair", 0, 0, 2, 2, seats=1)
    behind = plain_layout(stand("table", 21.5, 11.9, 14, 12))
    assert list(steps_clear(CheckCase(Derived(plain_yard(), placed_of(furnished(chair), behind))))) == []


@pytest.mark.parametrize(
    ("risers", "landings", "amounts"), [(1, 0, [1]), (2, 0, []), (7, 0, []), (8, 0, [1]), (8, 1, [])]
)
def test_flights_of_two_to_seven(risers, landings, amounts):
    """A single riser and an eighth without a landing are findings."""
    flight = Flight(
        ("table", "kitchen door"),
        risers,
        6.0,
        14.0,
        5.0,
        (40, 30),
        (0, 1),
        landings,
        needs_handrail=False,
        needs_guard=False,
    )
    case = CheckCase(Derived(plain_yard(), placed_of(plain_rooms(), Layout(()))))
    case.derived.__dict__["levelled"] = replace(case.derived.levelled, flights=(flight,))
    assert [finding.amount for finding in steps_clear(case)] == amounts
    assert [finding.amount for finding in steps_at_doors(case)] == amounts


@pytest.mark.parametrize(("rear_ft", "risers"), [(-3.0, []), (-5.0, [1])])
def test_risers_between_the_door_and_the_kitchen(rear_ft, risers):
    """Table and cooker lie at their mean ground, 18 or 26 in below the floor: three risers, or one more than asked."""
    found = list(kitchen_level(CheckCase(Derived(on_slope(rear_ft), placed_of(plain_rooms(), plain_layout())))))
    assert [finding.amount for finding in found] == risers


def test_no_steps_between_kitchen_and_table():
    """A cooker that neither touches nor faces the table lies at its own level; without levels nobody asks."""
    layout = Layout((KEPT["table"], stand("cooker", 42, 22, 6, 8, "+x")))
    case = CheckCase(
        Derived(
            on_slope(-9.0),
            placed_of(plain_rooms(), Layout((stand("table", 24, 28, 14, 10), stand("cooker", 42, 14, 8, 6, "+x")))),
        )
    )
    ends = [finding.rooms for finding in kitchen_level(case)]
    assert ("cooker", "table") in ends
    assert list(kitchen_level(CheckCase(Derived(plain_yard(), placed_of(plain_rooms(), layout))))) == []
