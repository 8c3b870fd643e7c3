"""From the record of a cost back to the cost."""

from decimal import Decimal
from typing import Final

from optimizer.appraisal import Cost, CostLine
from optimizer.results.untrusted import Record, refuse

MOST_UNITS: Final = 1e9
"""Of an item on a cost line; products with prices stay exact decimals."""


def cost_from(record: Record) -> Cost:
    """Cost of a record."""
    phases = record.record("phases")
    return Cost(
        lines=tuple(_cost_line(line) for line in record.records("lines")),
        phases=tuple((_phase(phases, name), phases.money(name)) for name in phases.values),
        total=record.money("total"),
        low=record.money("low"),
        high=record.money("high"),
    )


def _phase(phases: Record, name: str) -> int:
    if not (name.isascii() and name.isdigit() and len(name) <= 3):
        refuse("the number of a phase", name, phases.where)
    return int(name)


def _cost_line(record: Record) -> CostLine:
    return CostLine(
        phase=record.whole("phase"),
        room=record.text("room"),
        item=record.text("item"),
        # By its shortest text, so that a quantity written as 12.35 comes back as 12.35.
        quantity=Decimal(repr(record.number("quantity", largest=MOST_UNITS))),
        unit=record.text("unit"),
        unit_price=record.money("unit_price"),
        amount=record.money("amount"),
    )
