"""What the wishes cost at the least, before any layout: which of them the ceiling cannot hold together."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import accumulate, combinations, islice
from typing import Final

from optimizer.brief import Brief
from optimizer.catalogue.bill import fixed_price, room_price
from optimizer.catalogue.existing import NOTHING_THERE, Existing
from optimizer.catalogue.price_book import PriceBook
from optimizer.catalogue.rooms import SizedRoom

_TOLD: Final = 5
_LOOKED_AT: Final = 10_000
Without = tuple[tuple[str, ...], Decimal]
"""Rooms that wait, and what the others cost then."""


@dataclass(frozen=True, slots=True)
class Affordable:
    """Least price of all wishes together, each at its cheapest size, contingency included; ways, steps and runs come on
    top. `without` are the smallest sets of rooms of which one has to wait, with what the others then cost at the least;
    of many such sets those of the dearest rooms.
    """

    least: Decimal
    ceiling: Decimal | None
    without: tuple[Without, ...] = ()

    @property
    def over(self) -> Decimal:
        """What is wanting under the ceiling for all of it; 0 where nothing is, or no ceiling is given."""
        return max(Decimal(0), self.least - self.ceiling) if self.ceiling is not None else Decimal(0)


def affordable(
    brief: Brief, rooms: Sequence[SizedRoom], book: PriceBook, existing: Existing = NOTHING_THERE
) -> Affordable:
    """Hold all wishes against the ceiling, on least prices alone."""
    budget, ceiling = brief.budget, brief.budget.ceiling
    # Pad and stubs are no wish that comes true, unless they are what is held.
    sizes = {room.name: room.sizes or room.choices for room in rooms}
    prices = {room.name: min(room_price(size, room, book, existing) for size in sizes[room.name]) for room in rooms}
    least = budget.least(fixed_price(brief, book, existing) + sum(prices.values()))
    if ceiling is None or least <= ceiling:
        return Affordable(least, ceiling)
    optional = {room.name: prices[room.name] * budget.factor for room in rooms if not room.required}
    return Affordable(least, ceiling, tuple(_smallest(optional, least, ceiling)))


def _smallest(optional: dict[str, Decimal], least: Decimal, ceiling: Decimal) -> Iterator[Without]:
    """Sets of as few rooms as will do, the dearest first, without which the others keep below the ceiling."""
    dearest = sorted(optional, key=lambda name: -optional[name])
    saved = accumulate(optional[name] for name in dearest)
    size = next((count for count, saving in enumerate(saved, 1) if least - saving <= ceiling), None)
    # Of many rooms there are more sets than anybody could look through: those of the dearest come first.
    sets = [] if size is None else islice(combinations(dearest, size), _LOOKED_AT)
    priced = ((names, least - sum(optional[name] for name in names)) for names in sets)
    yield from islice(((names, price) for names, price in priced if price <= ceiling), _TOLD)
