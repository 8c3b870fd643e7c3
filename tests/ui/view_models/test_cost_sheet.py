"""The cost sheet: every line, contingency and sums."""

from dataclasses import replace
from decimal import Decimal

from optimizer.appraisal import CostLine
from optimizer.quantities import Part
from tests.sample_run import sample_option
from ui.view_models import Words, cost_sheet


def test_cost_sheet_adds_up_by_phase():
    """A phase has its own rooms only, its contingency is what the total holds beyond the lines, and cents are kept."""
    shown = cost_sheet(sample_option().appraisal.cost, Words("USD", "ft"))
    first, second = shown.phases
    assert [(room.room, room.total) for room in first.rooms] == [
        ("gathering area", "$5,040.00"),
        ("quiet nook", "$1,715.63"),
    ]
    assert (first.contingency, first.total) == ("$1,013.34", "$7,768.97")
    assert [room.room for room in second.rooms] == ["water reserve"]
    assert (second.contingency, second.total) == ("$2,100.00", "$16,100.00")
    assert (shown.total, shown.low, shown.high) == ("$23,868.97", "$20,000", "$29,000")


def test_line_says_quantity_and_price():
    """A line shows how much at what price."""
    row = cost_sheet(sample_option().appraisal.cost, Words("USD", "ft")).phases[0].rooms[1].rows[0]
    assert (row.item, row.quantity, row.amount) == ("paving", "56.25 sq ft at $30.50", "$1,715.63")


def test_parts_are_folded_under_their_line():
    """Of the line's own room and item alone, with the sum that a person can follow; in metres where the yard is."""
    parts = (
        Part("quiet nook", "paving", "bedding sand", 0.17, "cu yd", "56.0 sq ft x 1 in / 324", "ICPI"),
        Part("gathering area", "paving", "bedding sand", 9.0, "cu yd", "elsewhere", "ICPI"),
    )
    cost = sample_option().appraisal.cost
    row = cost_sheet(cost, Words("USD", "ft"), parts).phases[0].rooms[1].rows[0]
    assert row.parts == ("bedding sand: 0.17 cu yd (56.0 sq ft x 1 in / 324)",)
    assert (
        cost_sheet(cost, Words("USD", "m"), parts)
        .phases[0]
        .rooms[1]
        .rows[0]
        .parts[0]
        .startswith("bedding sand: 0.13 m³")
    )


def test_contingency_is_no_line_of_a_room():
    """A line of contingency is shown as the phase's contingency, once, and in no room; the sum stays."""
    cost = sample_option().appraisal.cost
    line = CostLine(1, "site", "contingency", Decimal("0.15"), "share", Decimal("6755.63"), Decimal("1013.34"))
    first = cost_sheet(replace(cost, lines=(*cost.lines, line)), Words("USD", "ft")).phases[0]
    assert [room.room for room in first.rooms] == ["gathering area", "quiet nook"]
    assert (first.contingency, first.total) == ("$1,013.34", "$7,768.97")
