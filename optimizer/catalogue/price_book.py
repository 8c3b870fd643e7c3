"""Unit prices: a dated book, and what an amount of an item costs."""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True)
class UnitPrice:
    """Price of one unit of an item, with the range that an estimate at concept stage carries."""

    item: str
    words: str
    unit: str
    price: Decimal
    low: Decimal
    high: Decimal


@dataclass(frozen=True, slots=True)
class PriceBook:
    """Unit prices of one currency and date; `note` says where they come from."""

    name: str
    date: str
    currency: str
    note: str
    prices: tuple[UnitPrice, ...]
    digest: str

    def of(self, item: str) -> UnitPrice:
        """Price of an item.

        Raises
        ------
        KeyError
            If the book has no such item: a fault of the catalogue, found by its tests.
        """
        for price in self.prices:
            if price.item == item:
                return price
        raise KeyError(item)
