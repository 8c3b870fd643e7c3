"""Take-off and estimate of one concept as a table."""

import csv
import io
from dataclasses import replace
from decimal import Decimal

from optimizer.appraisal import cost_of
from optimizer.brief import Allowances, Budget, Later
from optimizer.catalogue import Charge, with_allowances
from optimizer.results.estimate_table import COLUMNS, estimate_table
from tests.sample_run import sample_option, sample_scenario

BUDGET = Budget(contingency=Decimal("0.15"), overhead=Decimal("0.1"), later=Later(Decimal(2), Decimal("0.05")))
CHARGES = (
    Charge(1, "=cmd()", "lawn", Decimal(100)),
    Charge(1, "table", "unit paving", Decimal("168.25")),
    Charge(1, "site", "path paving", Decimal(40)),
    Charge(1, "chairs", "unit paving", Decimal(80)),
    Charge(2, "reserve", "future hot tub", Decimal(1)),
)


def option():
    """A concept with that estimate."""
    made = sample_option()
    cost = cost_of(CHARGES, sample_scenario().book, BUDGET)
    return replace(made, appraisal=replace(made.appraisal, cost=cost))


def rows():
    """Rows of its table."""
    return list(csv.DictReader(io.StringIO(estimate_table(sample_scenario(), option()))))


def of_phase(phase, *, kind):
    """Rows of a phase: lines of work, sums of assemblies, steps."""
    found = [row for row in rows() if row["phase"] == str(phase)]
    return [
        row
        for row in found
        if {"line": bool(row["item"]) and row["unit"] != "share", "sum": row["assembly"].startswith("sum of")}.get(
            kind, row["unit"] == "share"
        )
    ]


def total(found, column="amount"):
    """Sum of a column."""
    return sum(Decimal(row[column]) for row in found)


def test_every_line_is_there_by_assembly_and_room():
    """Each column filled, in the order of an estimate, and what stands in it multiplies to the cent."""
    lines = of_phase(1, kind="line")
    assert [(row["assembly"], row["room"]) for row in lines] == [
        ("terrace", "table"),
        ("terrace", "chairs"),
        ("ways", "site"),
        ("planting and lawn", "'=cmd()"),
    ]
    first = lines[0]
    assert list(first) == list(COLUMNS)
    assert all(first[column] for column in COLUMNS if not column.startswith("range_"))
    assert first["how"] == "168.25 sq ft of unit paving at 32.00"
    assert first["source"] == "invented price"
    assert Decimal(first["quantity"]) * Decimal(first["unit_price"]) == Decimal(first["amount"])


def test_it_adds_up_to_the_cent():
    """Sums of assemblies are those of the lines, lines and steps are the phase, phases the total."""
    phases = {row["assembly"]: row for row in rows() if row["assembly"].startswith("total of")}
    for phase in (1, 2):
        lines, steps = of_phase(phase, kind="line"), of_phase(phase, kind="step")
        for column in ("amount", "price_low", "price_high"):
            assert total(of_phase(phase, kind="sum"), column) == total(lines, column)
        assert total(lines) + total(steps) == Decimal(phases[f"total of phase {phase}"]["amount"])
    (whole,) = [row for row in rows() if row["assembly"] == "total"]
    for column in ("amount", "range_low", "range_high"):
        assert total(phases.values(), column) == Decimal(whole[column])
    assert [row["item"] for row in of_phase(2, kind="step")] == ["overhead", "escalation", "contingency"]
    assert "-15 % to +20 %, class 4" in phases["total of phase 1"]["how"]


def test_ends_of_prices_and_ranges_of_totals_are_no_one_column():
    """Lines, steps and sums have the ends of their prices, totals the range of their class; each row as many cells."""
    for row in rows():
        if row["assembly"] != "note":
            has_range = row["assembly"].startswith("total")
            ends = [bool(row[column]) for column in ("price_low", "price_high", "range_low", "range_high")]
            assert ends == [not has_range, not has_range, has_range, has_range], row
    assert {len(row) for row in csv.reader(io.StringIO(estimate_table(sample_scenario(), option())))} == {len(COLUMNS)}
    assert [row["how"] for row in of_phase(1, kind="sum")] == ["2 lines", "1 line", "1 line"]


def test_no_cell_is_a_formula():
    """Whatever a scenario calls its rooms."""
    cells = [cell for row in rows() for cell in row.values()]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


def test_it_says_whose_prices_they_are():
    """Invented ones, what is not in the sums, the range, and who decides."""
    notes = " ".join(row["words"] for row in rows() if row["assembly"] == "note")
    assert "invented" in notes
    assert "furniture is not" in notes
    assert "Phase 1: about 11,000 USD; expect 10,000 to 14,000 USD until soil, levels and lines are checked." in notes
    assert "Within 90 % of the ceiling, as a first concept should be." in notes
    assert "licensed professionals decide" in notes


def test_the_owners_sum_for_furniture_is_said_in_words():
    """It is in no price book: the scenario's budget has it."""
    scenario, made = sample_scenario(), sample_option()
    budget = replace(BUDGET, allowances=Allowances(furniture=Decimal(8000)))
    book = with_allowances(scenario.book, budget.allowances)
    cost = cost_of([*CHARGES, Charge(1, "site", "furniture", Decimal(1))], book, budget)
    there = replace(scenario, brief=replace(scenario.brief, budget=budget))
    text = estimate_table(there, replace(made, appraisal=replace(made.appraisal, cost=cost)))
    (line,) = [row for row in csv.DictReader(io.StringIO(text)) if row["item"] == "furniture"]
    assert line["words"] == "Furniture, the sum that the owner sets aside"
    assert (line["source"], line["amount"], line["price_high"]) == ("the scenario's budget", "8000.00", "8000.00")
