"""The price books that come with the program."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.catalogue import UnitPrice, book_for, demo_price_book, digest_of
from optimizer.errors import ScenarioError


@pytest.mark.parametrize("currency", ["USD", "AUD"])
def test_books_are_whole(currency: str) -> None:
    """A book is dated, in its currency, invented by its own word, and bounds each price from both sides."""
    book = book_for(currency)
    assert (book.currency, book.date) == (currency, "2026-09")
    assert "invented" in book.note.lower()
    assert all(Decimal(0) < price.low <= price.price <= price.high for price in book.prices)
    assert len({price.item for price in book.prices}) == len(book.prices)


@pytest.mark.parametrize("currency", ["USD", "AUD"])
def test_prices_lie_in_the_middle_of_their_ranges(currency: str) -> None:
    """An estimate is the middle of what it claims: no price outside the middle third of its own range, and on the
    whole half of them on either side of its middle.
    """
    book = book_for(currency)
    assert book.away_from_middle == ()
    assert sum(price.place for price in book.prices) / len(book.prices) == pytest.approx(0.5, abs=0.02)


def test_where_a_price_lies() -> None:
    """At an end, in the middle, and of a price that has no range."""
    ends = ((10, 0.0), (15, 0.5), (20, 1.0))
    for price, place in ends:
        unit = UnitPrice("a", "A", "ft", Decimal(price), Decimal(10), Decimal(20))
        assert unit.place == place
        assert bool(replace(demo_price_book(), prices=(unit,)).away_from_middle) == (place != 0.5)
    assert UnitPrice("a", "A", "ft", Decimal(10), Decimal(10), Decimal(10)).place == 0.5


def test_demonstration_books_say_that_they_are_invented() -> None:
    """In the sentence that stands on every output."""
    assert "They are invented for demonstrations" in demo_price_book().said


def test_digests_are_of_what_is_said() -> None:
    """Any other price, date or word is another digest."""
    book = demo_price_book()
    first = replace(book.prices[0], price=Decimal("32.01"))
    for other in (
        replace(book, date="2026-10"),
        replace(book, prices=(first, *book.prices[1:])),
        replace(book, invented=()),
    ):
        assert digest_of(other) != book.digest
    assert digest_of(book) == book.digest


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
