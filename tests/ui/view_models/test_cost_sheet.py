"""The cost sheet: every line, stated steps, sums and ranges."""

from dataclasses import replace
from decimal import Decimal

from optimizer.appraisal import CostLine, CostRange, Mover, Uncertainty, cost_of
from optimizer.brief import Budget
from optimizer.catalogue import Charge, demo_price_book
from optimizer.quantities import Part
from tests.sample_run import sample_option
from ui.view_models import Words, cost_sheet


def test_cost_sheet_adds_up_by_phase():
    """A phase has its own rooms only, and sums say no cents: those are in the tables to hand over."""
    shown = cost_sheet(sample_option().appraisal.cost, Words("USD", "ft"))
    first, second = shown.phases
    assert [(room.room, room.total) for room in first.rooms] == [
        ("gathering area", "$5,040"),
        ("quiet nook", "$1,716"),
    ]
    assert (first.steps, first.total) == ((), "$7,769")
    assert [room.room for room in second.rooms] == ["water reserve"]
    assert second.total == "$16,100"
    assert (shown.total, shown.low, shown.high) == ("$23,869", "$20,000", "$29,000")


def test_line_says_quantity_and_price():
    """A line shows how much at what price."""
    row = cost_sheet(sample_option().appraisal.cost, Words("USD", "ft")).phases[0].rooms[1].rows[0]
    assert (row.item, row.quantity, row.amount) == ("paving", "56.25 sq ft at $30.50", "$1,716")


def test_parts_are_folded_under_their_line():
    """Of the line's own phase, room and item alone, with the sum that a person can follow; in metres where the yard is."""
    parts = (
        Part("quiet nook", "paving", "bedding sand", 0.17, "cu yd", "56.0 sq ft x 1 in / 324", "ICPI"),
        Part("gathering area", "paving", "bedding sand", 9.0, "cu yd", "elsewhere", "ICPI"),
        Part("quiet nook", "paving", "bedding sand", 5.0, "cu yd", "of the later phase", "ICPI", phase=2),
    )
    cost = sample_option().appraisal.cost
    rows = [cost_sheet(cost, Words("USD", unit), parts=parts).phases[0].rooms[1].rows[0] for unit in ("ft", "m")]
    assert rows[0].parts == ("bedding sand: 0.17 cu yd (56.0 sq ft x 1 in / 324)",)
    assert rows[1].parts[0].startswith("bedding sand: 0.13 m³")


def test_steps_are_no_lines_of_a_room():
    """Overhead and contingency are shown as the phase's steps with their shares, once, and in no room."""
    cost = sample_option().appraisal.cost
    base = Decimal("6755.63")
    lines = (
        CostLine(1, "site", "overhead", Decimal("0.1"), "share", base, Decimal("675.56")),
        CostLine(1, "site", "contingency", Decimal("0.05"), "share", Decimal("7431.19"), Decimal("371.56")),
    )
    first = cost_sheet(replace(cost, lines=(*cost.lines, *lines)), Words("USD", "ft")).phases[0]
    assert [room.room for room in first.rooms] == ["gathering area", "quiet nook"]
    assert [(step.item, step.quantity, step.amount) for step in first.steps] == [
        ("overhead", "10 %", "$676"),
        ("the sum for surprises", "5 %", "$372"),
    ]


def test_ranges_and_what_moves_them_are_said():
    """Each phase with its range and its percentages, the chance of the ceiling, and the lines that move it."""
    cost = replace(sample_option().appraisal.cost, ranges=((1, CostRange(Decimal(6600), Decimal(9300), 4)),))
    found = Uncertainty(0.62, Decimal(7000), Decimal(8500), (Mover("quiet nook", "paving", 0.41),))
    shown = cost_sheet(cost, Words("USD", "ft"), found, "Prices: invented.")
    assert shown.phases[0].expect == "Phase 1: expect $6,600 to $9,300 (-15 % to +20 %)."
    assert shown.phases[1].expect == ""
    assert "$7,000 to $8,500" in shown.sure
    assert "stay under the all-in limit is 62%" in shown.sure
    assert [(row.item, row.quantity, row.amount) for row in shown.movers] == [("paving", "quiet nook", "41%")]
    assert shown.prices == "Prices: invented."


def test_a_share_of_lines_is_no_quantity():
    """20 % of a sum of money, and its rule in per cent."""
    cost = cost_of([Charge(1, "site", "poor access", Decimal("14178.97"))], demo_price_book(), Budget())
    parts = (Part("site", "poor access", "by rule", 0.2, "share", "no way for machines"),)
    (row,) = cost_sheet(cost, Words("USD", "ft"), parts=parts).phases[0].rooms[0].rows
    assert (row.quantity, row.parts) == ("20 % of $14,179", ("by rule: 20 % (no way for machines)",))
