"""From charges to a cost sheet that adds up to the cent."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Final

from optimizer.appraisal.cost_sheet import Cost, CostLine, CostRange, share_of
from optimizer.brief import Budget
from optimizer.catalogue import (
    FURNITURE,
    SHARE,
    SITE,
    STEPS,
    Charge,
    PriceBook,
    UnitPrice,
    assembly_of,
    bought_by_owners,
    class_of,
    narrowest,
    to_cents,
)

_BUDGET: Final = "the scenario's budget"
_NOTHING: Final = Decimal("0.00")


def cost_of(charges: Sequence[Charge], book: PriceBook, budget: Budget) -> Cost:
    """Cost sheet of charges: a line each, and for each phase a line of each stated step, a share of builders' lines;
    what the owner sets aside comes after these, as it stands.

    Amounts are rounded to the cent, half up; a phase is the exact sum of its lines and the total that of its phases.
    A phase's range is that of its class of estimate; `low` and `high` are the sums of the phases' ranges. A charge of
    nothing makes no line.
    """
    charges = sorted((charge for charge in charges if charge.quantity), key=lambda charge: charge.phase)
    sheet: tuple[CostLine, ...] = ()
    for phase in dict.fromkeys(charge.phase for charge in charges):
        own = tuple(_line(charge, book) for charge in charges if charge.phase == phase)
        builders = tuple(line for line in own if not line.is_owners_sum)
        owners = tuple(line for line in own if line.is_owners_sum)
        sheet += (*builders, *_steps(phase, builders, budget), *owners)
    phases = tuple((phase, sum_of(sheet, phase)) for phase in dict.fromkeys(line.phase for line in sheet))
    ranges = tuple((phase, _range(phase, sheet, budget)) for phase, _ in phases)
    return Cost(
        lines=sheet,
        phases=phases,
        total=sum_of(sheet),
        low=sum((one.low for _, one in ranges), _NOTHING),
        high=sum((one.high for _, one in ranges), _NOTHING),
        ranges=ranges,
    )


def _line(charge: Charge, book: PriceBook) -> CostLine:
    price, quantity = book.of(charge.item), charge.quantity
    return CostLine(
        phase=charge.phase,
        room=charge.room,
        item=charge.item,
        quantity=quantity,
        unit=price.unit,
        unit_price=price.price,
        amount=to_cents(quantity * price.price),
        assembly=assembly_of(charge.item),
        low=to_cents(quantity * price.low),
        high=to_cents(quantity * price.high),
        how=_how(charge, price),
        source=_source(charge.item, price, book),
    )


def _how(charge: Charge, price: UnitPrice) -> str:
    if charge.item == FURNITURE:
        return "as the owner set it: no overhead, markup, contingency or tax is added"
    if price.unit == SHARE:
        return share_of(price.price, charge.quantity)
    return f"{charge.quantity.normalize():f} {price.unit} of {charge.item} at {price.price:.2f}"


def _source(item: str, price: UnitPrice, book: PriceBook) -> str:
    if item == FURNITURE:
        return _BUDGET
    if not price.high and item in bought_by_owners():
        return "left to the owner, not in the sums"
    return "invented price" if item in book.invented else f"{book.name}, {book.date}"


def _steps(phase: int, lines: Sequence[CostLine], budget: Budget) -> Iterator[CostLine]:
    """Stated steps of a phase, each a share of all before it: prices at their low or high end carry it along."""
    base, low, high = (sum(getattr(line, part) for line in lines) for part in ("amount", "low", "high"))
    for name, share in budget.steps(phase):
        amounts = [to_cents(amount * share) for amount in (base, low, high)]
        yield CostLine(
            phase=phase,
            room=SITE,
            item=name,
            quantity=share,
            unit=SHARE,
            unit_price=base,
            amount=amounts[0],
            assembly=STEPS,
            low=amounts[1],
            high=amounts[2],
            how=share_of(share, base),
            source=_BUDGET,
        )
        base, low, high = base + amounts[0], low + amounts[1], high + amounts[2]


def _range(phase: int, lines: Sequence[CostLine], budget: Budget) -> CostRange:
    """Range of a phase: a sum that the owner sets stays what it is."""
    estimate_class, fixed = class_of(phase, budget.estimate_class), [line for line in lines if line.is_owners_sum]
    owners = sum_of(fixed, phase)
    low, high = narrowest(estimate_class).around(sum_of(lines, phase) - owners)
    return CostRange(to_cents(low) + owners, to_cents(high) + owners, estimate_class)


def sum_of(lines: Sequence[CostLine], phase: int | None = None) -> Decimal:
    """Sum of the lines of a phase, or of all."""
    return sum((line.amount for line in lines if phase in {None, line.phase}), _NOTHING)
