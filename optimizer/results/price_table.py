"""A price book as a table: what a firm fills in with prices of its own, and a book on its way to another place."""

import csv
import io
from typing import Final

from optimizer.catalogue import DEMONSTRATION, PriceBook, price_text

_COLUMNS: Final = (
    *("item", "words", "unit", "price", "low", "high"),
    *("date", "region", "currency", "name", "note", "based_on"),
)


def price_table(book: PriceBook) -> str:
    """CSV text, one row an item, in the form that `--prices` reads.

    Of a firm's book that takes some prices from the demonstration, its own alone, so that it is read back as it is. Of
    a demonstration book all: to be replaced, and under its name refused, so that nobody takes them for a firm's own.
    """
    is_firms = len(book.invented) < len(book.prices)
    based_on = DEMONSTRATION if is_firms and book.invented else ""
    head = (book.date, book.region, book.currency, book.name, book.note, based_on)
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(_COLUMNS)
    for price in book.prices:
        if not (is_firms and price.item in book.invented):
            amounts = map(price_text, (price.price, price.low, price.high))
            writer.writerow([price.item, price.words, price.unit, *amounts, *head])
    return text.getvalue()
