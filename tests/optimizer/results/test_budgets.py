"""budgets.json and budgets.csv."""

import csv
import io
import json
from dataclasses import replace
from decimal import Decimal

from optimizer.catalogue import book_for, sized_rooms
from optimizer.concepts.budgets import NextThing
from optimizer.results import to_text
from optimizer.results.budgets import budgets_csv, budgets_document
from tests.sample_budgets import sample_budgets
from tests.sample_run import sample_scenario

POINT_KEYS = {"ceiling", "worth", "bound", "cost", "status", "rooms", "enters", "leaves", "next", "concept"}
"""As the contract of the result has them."""
LEVEL_KEYS = {"level", "level_before"}
"""Null where the brief offers no finish levels."""


def document(found=None):
    scenario = sample_scenario()
    rooms, book = sized_rooms(scenario.brief), book_for(scenario.currency)
    return json.loads(to_text(budgets_document(scenario, rooms, found or sample_budgets(), book=book)))


def test_the_form():
    """Keys of the contract, money as text, each point's concept among the options."""
    found = document()
    assert found["format"] == "outdoor-rooms/budgets/1"
    assert found["scenario"]["text"] == sample_scenario().text
    assert all(set(point) == POINT_KEYS | LEVEL_KEYS for point in found["points"])
    first, second = found["points"]
    assert (first["ceiling"], first["cost"], first["next"]["amount"]) == ("64000.00", "63957.10", "31000.00")
    assert first["next"] | {"amount": ""} == {
        "room": "fire feature",
        "choice": "six seats",
        "amount": "",
        "level": None,
    }
    assert second["next"] is None
    assert second["rooms"] == [
        {"name": "gathering area", "choice": "table for eight"},
        {"name": "fire feature", "choice": "six seats"},
    ]
    assert [option["id"] for option in found["options"]] == [point["concept"] for point in found["points"]]
    assert found["options"][0]["proof"] is None
    assert found["search"]["layouts_found"] == 98


def test_nothing_found():
    """An empty result is written too."""
    empty = document(replace(sample_budgets(), points=(), options=()))
    assert empty["points"] == empty["options"] == []


def test_the_table():
    """One row a point; a name that looks like a formula is none."""
    found = sample_budgets()
    odd = replace(found.points[0], rooms=(("=cmd", "x"),))
    rows = list(csv.DictReader(io.StringIO(budgets_csv(replace(found, points=(odd, found.points[1])), currency="USD"))))
    assert [row["ceiling"] for row in rows] == ["64000.00", "95000.00"]
    assert rows[0]["rooms"].startswith("'=")
    assert rows[1]["enters"] == "fire feature (six seats)"
    assert [row["level"] for row in rows] == ["", ""]


def test_finish_levels():
    """Each point has its own; a change stands beside the rooms, and in what comes next."""
    found = sample_budgets()
    first = replace(found.points[0], level="=plain", next=NextThing(None, None, Decimal(31_000), "good"))
    second = replace(found.points[1], level="good", level_before="=plain")
    found = replace(found, points=(first, second))
    one, other = document(found)["points"]
    assert (one["level"], one["level_before"], other["level"], other["level_before"]) == (
        "=plain",
        None,
        "good",
        "=plain",
    )
    assert one["next"] == {"room": None, "choice": None, "amount": "31000.00", "level": "good"}
    one, other = csv.DictReader(io.StringIO(budgets_csv(found, currency="USD")))
    assert (one["level"], one["enters"]) == ("'=plain", "gathering area (table for eight)")
    assert (other["level"], other["enters"]) == ("good", "fire feature (six seats); good materials")
    assert other["leaves"] == "'=plain materials"
