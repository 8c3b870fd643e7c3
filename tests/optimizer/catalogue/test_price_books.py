"""The price books that come with the program."""

from decimal import Decimal

import pytest

from optimizer.catalogue import book_for, demo_price_book
from optimizer.errors import ScenarioError


@pytest.mark.parametrize("currency", ["USD", "AUD"])
def test_books_are_whole(currency: str) -> None:
    """A book is dated, in its currency, invented by its own word, and bounds each price from both sides."""
    book = book_for(currency)
    assert (book.currency, book.date) == (currency, "2026-09")
    assert "invented" in book.note.lower()
    assert all(Decimal(0) < price.low <= price.price <= price.high for price in book.prices)
    assert len({price.item for price in book.prices}) == len(book.prices)


def test_books_hold_the_same_items() -> None:
    """What can be priced in one currency can be in the other, in the same units."""
    usd, aud = ({(price.item, price.unit) for price in book_for(currency).prices} for currency in ("USD", "AUD"))
    assert usd == aud
    assert demo_price_book().digest != book_for("AUD").digest


def test_an_unknown_currency_is_refused_with_advice() -> None:
    """A currency without a book is an error that names the ones there are."""
    with pytest.raises(ScenarioError, match="USD or AUD, found EUR; set currency"):
        book_for("EUR")


def test_an_item_that_is_not_there() -> None:
    """An item without a price is a fault, not free."""
    with pytest.raises(KeyError):
        demo_price_book().of("fountain")
