"""Versions of yards as scenarios, each with the price book that is kept with it."""

import json
from typing import Any

from optimizer.catalogue import PriceBook
from optimizer.results import to_text
from optimizer.results.price_table import price_table
from optimizer.results.schema import from_record, to_record
from optimizer.scenario import Scenario, read_scenario
from optimizer.scenario.document import read_document
from optimizer.scenario.price_books import read_price_book
from ui.store import Revision


def scenario_of(revision: Revision, text: str | None = None, name: str = "the yard") -> Scenario:
    """Read a version, or a text that is to follow it, with the prices of that version; may raise ScenarioError."""
    return read_scenario(revision.text if text is None else text, name, _book(revision))


def prices_of(scenario: Scenario) -> str | None:
    """Prices to be kept with a scenario; None for the demonstration prices, which every program has."""
    book = scenario.prices
    is_firms = book is not None and len(book.invented) < len(book.prices)
    return to_text(to_record(book)) if is_firms else None


def price_file(revision: Revision) -> str | None:
    """Prices of a version as the file that `--prices` reads, or None."""
    book = _book(revision)
    return None if book is None else price_table(book)


def read_with_prices(text: str, name: str, prices: str, prices_name: str) -> Scenario:
    """Read a scenario with a price book that lies beside it; raises ScenarioError for what is wrong in either."""
    currency = _head(text, name).get("currency", "USD")
    return read_scenario(text, name, read_price_book(prices, prices_name, str(currency)))


def named_prices(text: str, name: str) -> str | None:
    """The price book that a scenario's text names, or None; a text that cannot be read names none."""
    named = _head(text, name).get("prices")
    return named if isinstance(named, str) else None


def _head(text: str, name: str) -> dict[str, Any]:
    data = read_document(text, name).data
    return data if isinstance(data, dict) else {}


def _book(revision: Revision) -> PriceBook | None:
    if revision.prices is None:
        return None
    book: PriceBook = from_record(PriceBook, json.loads(revision.prices), "prices")
    return book
