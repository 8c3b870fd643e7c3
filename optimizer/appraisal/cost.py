"""From charges to a cost sheet that adds up to the cent."""

from collections.abc import Sequence
from decimal import Decimal

from optimizer.appraisal.appraisal import Cost, CostLine
from optimizer.catalogue import SITE, Charge, PriceBook, UnitPrice, to_cents

CONTINGENCY = "contingency"


def cost_of(charges: Sequence[Charge], book: PriceBook, contingency: Decimal) -> Cost:
    """Cost sheet of charges: a line each, and a line of contingency for each phase.

    Amounts are rounded to the cent, half up; a phase is the exact sum of its lines and the total that of its phases.
    `low` and `high` are the same sums at the low and high prices of the book. A charge of nothing makes no line.
    """
    charges = tuple(sorted((c for c in charges if c.quantity), key=lambda c: c.phase))
    lines = tuple(_line(c, book.of(c.item), book.of(c.item).price) for c in charges)
    lows = tuple(_line(c, book.of(c.item), book.of(c.item).low) for c in charges)
    highs = tuple(_line(c, book.of(c.item), book.of(c.item).high) for c in charges)
    sheet = _with_contingency(lines, contingency)
    return Cost(
        lines=sheet,
        phases=tuple((phase, _sum(sheet, phase)) for phase in _phases(sheet)),
        total=_sum(sheet),
        low=_sum(_with_contingency(lows, contingency)),
        high=_sum(_with_contingency(highs, contingency)),
    )


def _line(charge: Charge, price: UnitPrice, unit_price: Decimal) -> CostLine:
    return CostLine(
        phase=charge.phase,
        room=charge.room,
        item=charge.item,
        quantity=charge.quantity,
        unit=price.unit,
        unit_price=unit_price,
        amount=to_cents(charge.quantity * unit_price),
    )


def _with_contingency(lines: tuple[CostLine, ...], contingency: Decimal) -> tuple[CostLine, ...]:
    """Lines by phase, each phase closed by its contingency."""
    sheet: tuple[CostLine, ...] = ()
    for phase in _phases(lines):
        base = _sum(lines, phase)
        close = CostLine(phase, SITE, CONTINGENCY, contingency, "share", base, to_cents(base * contingency))
        sheet += (*(line for line in lines if line.phase == phase), close)
    return sheet


def _phases(lines: tuple[CostLine, ...]) -> tuple[int, ...]:
    return tuple(sorted({line.phase for line in lines}))


def _sum(lines: tuple[CostLine, ...], phase: int | None = None) -> Decimal:
    return sum((line.amount for line in lines if phase in (None, line.phase)), Decimal("0.00"))
