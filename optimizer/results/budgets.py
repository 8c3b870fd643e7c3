"""What each budget buys, as the document that budgets.json holds, and as a table for a spreadsheet."""

import csv
import io
from collections.abc import Sequence
from typing import Any, Final

from optimizer.catalogue import PriceBook, SizedRoom
from optimizer.concepts.budgets import BudgetPoint, BudgetSet
from optimizer.results.document import CARRIED, option_record
from optimizer.results.forms import money
from optimizer.results.schema import to_record
from optimizer.results.table import safe_cell
from optimizer.results.versions import versions
from optimizer.scenario import Scenario

FORMAT: Final = "outdoor-rooms/budgets/1"
_COLUMNS: Final = (
    *("ceiling", "currency", "cost", "worth", "bound", "status"),
    *("rooms", "enters", "leaves", "concept", "prices", "level"),
)


def budgets_document(
    scenario: Scenario, rooms: Sequence[SizedRoom], found: BudgetSet, *, book: PriceBook
) -> dict[str, Any]:
    """Document of what each budget buys. Lengths in feet, money as text with two decimals."""
    return {
        "format": FORMAT,
        "scenario": {name: getattr(scenario, name) for name in CARRIED},
        "versions": versions(book),
        "prices": to_record(book),
        **to_record(found),
        "options": [option_record(rooms, option) for option in found.options],
    }


def budgets_csv(found: BudgetSet, *, currency: str, prices: str = "") -> str:
    """CSV text, one row a point, by rising ceiling."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(_COLUMNS)
    writer.writerows(
        [*_row(point, currency), safe_cell(prices), safe_cell(point.level or "")] for point in found.points
    )
    return text.getvalue()


def _row(point: BudgetPoint, currency: str) -> list[str]:
    changed = point.level_before is not None
    rooms, enters, leaves = (
        "; ".join([*(f"{room} ({choice})" for room, choice in things), *levels])
        for things, levels in (
            (point.rooms, ()),
            (point.enters, [f"{point.level} materials"] * changed),
            (point.leaves, [f"{point.level_before} materials"] * changed),
        )
    )
    return [
        money(point.ceiling),
        safe_cell(currency),
        money(point.cost),
        f"{point.worth:g}",
        f"{point.bound:g}",
        point.status,
        *(safe_cell(text) for text in (rooms, enters, leaves, point.concept)),
    ]
