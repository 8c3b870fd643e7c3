"""The price books that come with the program: dated, and invented."""

import hashlib
from decimal import Decimal
from functools import cache
from typing import Any, Final

import yaml

from optimizer.catalogue.data_files import data_text
from optimizer.catalogue.price_book import PriceBook, UnitPrice
from optimizer.errors import Problem, ScenarioError

_FILES: Final = {"USD": "price_book.yaml", "AUD": "price_book_aud.yaml"}


def demo_price_book() -> PriceBook:
    """Invented book in US dollars."""
    return book_for("USD")


@cache
def book_for(currency: str) -> PriceBook:
    """Price book of a currency; ScenarioError where there is none, for money is never converted silently."""
    if currency not in _FILES:
        known = " or ".join(_FILES)
        advice = "set currency to one of these, with the ceiling in it"
        raise ScenarioError((Problem(f"a currency with a price book: {known}", currency, advice, "currency"),))
    return _read(data_text(_FILES[currency]))


def _read(text: str) -> PriceBook:
    entry = yaml.safe_load(text)
    return PriceBook(
        name=entry["name"],
        date=entry["date"],
        currency=entry["currency"],
        note=entry["note"],
        prices=tuple(_unit_price(price) for price in entry["prices"]),
        digest=hashlib.sha256(text.encode()).hexdigest(),
    )


def _unit_price(entry: dict[str, Any]) -> UnitPrice:
    price, low, high = (Decimal(str(entry[name])) for name in ("price", "low", "high"))
    return UnitPrice(entry["item"], entry["words"], entry["unit"], price, low, high)
