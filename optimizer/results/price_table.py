"""A price book as a table: what a firm fills in with prices of its own."""

import csv
import io
from typing import Final

from optimizer.catalogue import PriceBook
from optimizer.results.forms import money

_COLUMNS: Final = ("item", "words", "unit", "price", "low", "high", "date", "region", "currency", "name")


def price_table(book: PriceBook) -> str:
    """CSV text, one row an item, in the form that `--prices` reads."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(_COLUMNS)
    for price in book.prices:
        amounts = (money(price.price), money(price.low), money(price.high))
        head = (book.date, book.region, book.currency, book.name)
        writer.writerow([price.item, price.words, price.unit, *amounts, *head])
    return text.getvalue()
