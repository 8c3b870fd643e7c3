"""Owner's allowances: what owners buy or set aside themselves, in a price book or out of it."""

from dataclasses import replace
from decimal import Decimal
from typing import Final

from optimizer.brief import Allowances
from optimizer.catalogue.assemblies import bought_by_owners
from optimizer.catalogue.price_book import PriceBook, UnitPrice

FURNITURE: Final = "furniture"
_NOTHING: Final = Decimal(0)


def with_allowances(book: PriceBook, allowances: Allowances) -> PriceBook:
    """The same book with what owners buy themselves at no price, and the sum that they set aside for furniture.

    Engine and estimate read one book, so that the least a room costs stays a bound of what it costs.
    """
    prices = book.prices if allowances.appliances else tuple(map(_left_to_owner, book.prices))
    if allowances.furniture:
        ends = [allowances.furniture] * 3
        prices += (UnitPrice(FURNITURE, "Furniture, the sum that the owner sets aside", "lump", *ends),)
    return book if prices is book.prices else replace(book, prices=prices)


def _left_to_owner(price: UnitPrice) -> UnitPrice:
    is_left = price.item in bought_by_owners()
    return replace(price, price=_NOTHING, low=_NOTHING, high=_NOTHING) if is_left else price


def allowance_words(allowances: Allowances, currency: str) -> str:
    """What of the owner's own things is in the sums and what is not, in a sentence."""
    where = "are in the sums" if allowances.appliances else "are the owner's, not in the sums"
    if allowances.furniture:
        return f"Appliances {where}; furniture is in them with {allowances.furniture:,.0f} {currency}, as it stands."
    return f"Appliances {where}; furniture is not."
