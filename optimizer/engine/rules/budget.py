"""Phase 1 with its stated steps costs at most the ceiling: here the rooms alone, the judge adds ways and steps."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from optimizer.catalogue import PriceBook, SizedRoom, existing_of, fixed_price, room_price
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part, Variants

CENTS = 100


def costs_of(
    context: Context,
    room: SizedRoom,
    variants: Sequence[Variant],
    book: PriceBook,
    *,
    phase: int = 1,
    more: Decimal | None = None,
) -> tuple[int, ...]:
    """Least cost of each variant of a room in a phase, in cents: its price times `more`, else with the stated steps."""
    factor, there = context.scenario.brief.budget.factor if more is None else more, existing_of(context.site)
    prices = (room_price(room.choices[variant.choice], room, book, there, phase=phase) for variant in variants)
    return tuple(int(price * factor * CENTS) for price in prices)


def _spendable(context: Context, variants: Variants, book: PriceBook) -> Iterator[Amount]:
    brief = context.scenario.brief
    if brief.budget.ceiling is not None:
        fixed = brief.budget.least(fixed_price(brief, book, existing_of(context.site)))
        spendable = int((brief.budget.ceiling - fixed) * CENTS)
        uses = tuple(costs_of(context, room, own, book) for room, own in zip(context.rooms, variants, strict=True))
        yield Amount("budget", uses, most=spendable)


PART = Part(amounts=_spendable)
