"""The prices that a result was made with: it carries them, so that it can be counted again without their file."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from optimizer.catalogue import PriceBook, book_for, digest_of, has_demo_book
from optimizer.results.schema import from_record
from optimizer.results.untrusted import refuse

_TOLD: Final = 5


def stored_book(document: Mapping[str, Any], name: str) -> PriceBook | None:
    """Price book of a result, its digest made anew; None for an older result, which carries none. Items that this
    program has come to know since then have their demonstration price.

    Raises
    ------
    ResultError
        If an item is in the wrong unit or has no price at all, or a price lies outside its own range.
    """
    if document.get("prices") is None:
        return None
    where = f"{name}.prices"
    book: PriceBook = from_record(PriceBook, document["prices"], where)
    known = book_for(book.currency if has_demo_book(book.currency) else "USD")
    given = {price.item: price for price in book.prices}
    for i, price in enumerate(book.prices):
        if not 0 <= price.low <= price.price <= price.high:
            refuse("0 up to low, price and high", f"{price.low}, {price.price}, {price.high}", f"{where}.prices[{i}]")
    lacking = tuple(price for price in known.prices if price.item not in given)
    for price in known.prices:
        if price in lacking and not has_demo_book(book.currency):
            refuse(f"a price of {price.item}", None, where)
        if price not in lacking and given[price.item].unit != price.unit:
            refuse(f"a price of {price.item} by the {price.unit}", given[price.item].unit, where)
    return replace(
        book,
        digest=digest_of(book),
        prices=(*book.prices, *lacking),
        invented=(*book.invented, *(price.item for price in lacking)),
    )


def made_up(book: PriceBook) -> tuple[str, ...]:
    """Items whose price a book calls invented, though it is not the one of the demonstration book."""
    if not book.invented:
        return ()
    if not has_demo_book(book.currency):
        return book.invented[:_TOLD]
    known = {price.item: price for price in book_for(book.currency).prices}
    given = {price.item: price for price in book.prices}
    return tuple(item for item in book.invented if given.get(item) != known.get(item))[:_TOLD]
