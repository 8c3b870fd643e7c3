"""The price books that come with the program: dated, and invented."""

from decimal import Decimal
from functools import cache
from typing import Any, Final

import yaml

from optimizer.catalogue.data_files import data_text
from optimizer.catalogue.price_book import PriceBook, UnitPrice, with_digest
from optimizer.errors import Problem, ScenarioError

DEMONSTRATION: Final = "demonstration prices"
"""What a firm's book says that it is based on where it gives only some of the prices."""
_FILES: Final = {"USD": "price_book.yaml", "AUD": "price_book_aud.yaml"}


def demo_price_book() -> PriceBook:
    """Invented book in US dollars."""
    return book_for("USD")


def has_demo_book(currency: str) -> bool:
    """Whether a demonstration book has prices in a currency."""
    return currency in _FILES


def demo_names() -> tuple[str, ...]:
    """Names of all demonstration books."""
    return tuple(book_for(currency).name for currency in _FILES)


@cache
def book_for(currency: str) -> PriceBook:
    """Price book of a currency; ScenarioError where there is none, for money is never converted silently."""
    if not has_demo_book(currency):
        known = " or ".join(_FILES)
        advice = "set currency to one of these, with the ceiling in it, or name your own price book under `prices:`"
        raise ScenarioError((Problem(f"a currency with a price book: {known}", currency, advice, "currency"),))
    return _read(data_text(_FILES[currency]))


def _read(text: str) -> PriceBook:
    entry = yaml.safe_load(text)
    prices = tuple(_unit_price(price) for price in entry["prices"])
    book = PriceBook(
        name=entry["name"],
        date=entry["date"],
        currency=entry["currency"],
        note=entry["note"],
        prices=prices,
        digest="",
        region=entry["region"],
        invented=tuple(price.item for price in prices),
    )
    return with_digest(book)


def _unit_price(entry: dict[str, Any]) -> UnitPrice:
    price, low, high = (Decimal(str(entry[name])) for name in ("price", "low", "high"))
    return UnitPrice(entry["item"], entry["words"], entry["unit"], price, low, high)
