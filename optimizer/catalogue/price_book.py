"""Unit prices: a dated book, and what an amount of an item costs."""

import hashlib
import json
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

SHARE: Final = "share"
"""Unit of what is no work of its own but a share of other lines."""


@dataclass(frozen=True, slots=True)
class UnitPrice:
    """Price of one unit of an item, with the range that an estimate at concept stage carries; of the unit `share` the
    share of other lines that it comes to.
    """

    item: str
    words: str
    unit: str
    price: Decimal
    low: Decimal
    high: Decimal

    @property
    def place(self) -> float:
        """Where the price lies in its own range: 0 at the low end, 0.5 in the middle, 1 at the high end."""
        return 0.5 if self.low == self.high else float((self.price - self.low) / (self.high - self.low))


@dataclass(frozen=True, slots=True)
class PriceBook:
    """Unit prices of one currency, region and date; `note` says where they come from.

    `digest` is the SHA-256 of all the rest, made by `with_digest`. `invented` names the items whose price was made up
    for demonstrations: all of a demonstration book, and what a firm's own book takes from it.
    """

    name: str
    date: str
    currency: str
    note: str
    prices: tuple[UnitPrice, ...]
    digest: str
    region: str = ""
    invented: tuple[str, ...] = ()

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

    @property
    def said(self) -> str:
        """Where the prices come from, in a sentence that stands on every output."""
        region = f", {self.region}" if self.region else ""
        book = f"Prices: {self.name}{region}, of {self.date}"
        if len(self.invented) == len(self.prices):
            return f"{book}. They are invented for demonstrations: put in your own before you trust a total."
        if self.invented:
            count = f"{len(self.invented)} of its {len(self.prices)} prices"
            return f"{book}; {count} are invented for demonstrations: put in your own for these."
        return f"{book}."

    @property
    def away_from_middle(self) -> tuple[UnitPrice, ...]:
        """Prices outside the middle third of their own range: an estimate should be the middle of what it claims."""
        return tuple(price for price in self.prices if not 1 / 3 <= price.place <= 2 / 3)


def price_text(price: Decimal) -> str:
    """A price as it is written: two decimals, of a share up to four."""
    whole, _, part = f"{price:.4f}".partition(".")
    return f"{whole}.{part.rstrip('0'):0<2}"


def with_digest(book: PriceBook) -> PriceBook:
    """The book with the digest of what it says."""
    return replace(book, digest=digest_of(book))


def digest_of(book: PriceBook) -> str:
    """SHA-256 of all that a book says, whatever form it was written in."""
    rows = [
        [price.item, price.words, price.unit, *map(price_text, (price.price, price.low, price.high))]
        for price in book.prices
    ]
    said = [book.name, book.date, book.currency, book.note, book.region, list(book.invented), rows]
    return hashlib.sha256(json.dumps(said, ensure_ascii=False).encode()).hexdigest()
