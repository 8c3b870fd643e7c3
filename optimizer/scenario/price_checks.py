"""From the rows of a firm's price book to the book, or everything that is wrong with them at once."""

import re
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from pathlib import Path as FilePath
from typing import Any, Final

from optimizer.catalogue import (
    DEMONSTRATION,
    SHARE,
    PriceBook,
    UnitPrice,
    book_for,
    demo_names,
    has_demo_book,
    with_digest,
)
from optimizer.errors import ScenarioError
from optimizer.scenario.complaints import did_you_mean, found_text
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.price_file import MOST_ROWS, PriceRows
from optimizer.scenario.values import LONGEST_NAME

_AMOUNT: Final = re.compile(r"[0-9]{1,10}(\.[0-9]{1,2})?")
_SHARE: Final = re.compile(r"0(\.[0-9]{1,4})?|1(\.0{1,4})?")
_DATE: Final = re.compile(r"[0-9]{4}-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?")
_AMOUNTS: Final = ("price", "low", "high")
_TOLD_MISSING: Final = 8


def book_of(given: PriceRows, *, currency: str) -> PriceBook:
    """Price book of a file for a scenario in a currency.

    Units and words of items are those of the program; a book that says that it is based on the demonstration prices
    takes from them what it lacks.

    Raises
    ------
    ScenarioError
        With every problem found, each with file:line:column.
    """
    known = {price.item: price for price in book_for(currency if has_demo_book(currency) else "USD").prices}
    complaints = (*given.complaints, *_head(given.head, currency), *_rows(given, known))
    if complaints:
        in_order = sorted(complaints, key=given.document.place)
        raise ScenarioError(tuple(given.document.problem(complaint) for complaint in in_order))
    own = {row["item"]: _priced(row, known[row["item"]]) for row in given.rows}
    prices = tuple(own.get(item, price) for item, price in known.items())
    head = given.head
    return with_digest(
        PriceBook(
            name=str(head.get("name") or FilePath(given.document.name).stem),
            date=str(head["date"]),
            currency=currency,
            note=str(head.get("note") or ""),
            prices=prices,
            digest="",
            region=str(head.get("region") or ""),
            invented=tuple(item for item in known if item not in own),
        )
    )


def _priced(row: Mapping[str, Any], known: UnitPrice) -> UnitPrice:
    price, low, high = (Decimal(_text(row[name])) for name in _AMOUNTS)
    return UnitPrice(known.item, str(row.get("words") or known.words), known.unit, price, low, high)


def _head(head: Mapping[str, Any], currency: str) -> Iterator[Complaint]:
    found = head.get("currency")
    if found != currency:
        advice = "money is never converted: give prices and ceiling in one currency"
        yield Complaint(("currency",), f"prices in the scenario's currency, {currency}", found_text(found), advice)
    date = head.get("date")
    if not (isinstance(date, str) and _DATE.fullmatch(date)):
        yield Complaint(("date",), "the month of the prices, such as 2026-09", found_text(date), "write YYYY-MM")
    based = head.get("based_on")
    if based not in (None, DEMONSTRATION):
        yield Complaint(("based_on",), DEMONSTRATION, found_text(based), "write this, or take it away")
    elif based and not has_demo_book(currency):
        found = f"a book in {currency}"
        yield Complaint(("based_on",), "a currency with demonstration prices", found, "give every item a price")
    if head.get("name") in demo_names():
        advice = "write your firm's name, once the prices are your own"
        yield Complaint(("name",), "a name of your own", "that of the demonstration prices", advice)
    for key in ("name", "region", "note"):
        if (words := head.get(key)) is not None and not _is_name(words):
            expected = f"text on one line, at most {LONGEST_NAME} characters"
            yield Complaint((key,), expected, found_text(words), "shorten it")


def _rows(given: PriceRows, known: Mapping[str, UnitPrice]) -> Iterator[Complaint]:
    if len(given.rows) > MOST_ROWS:
        yield Complaint(("prices",), f"at most {MOST_ROWS} prices", str(len(given.rows)), "take out what is not used")
        return
    seen: set[str] = set()
    for number, row in enumerate(given.rows):
        path: Path = ("prices", number)
        if row:
            yield from _item(row, path, known, seen)
            yield from _amounts(row, path, is_share=_unit_of(row, known) == SHARE)
    lacking = [item for item in known if item not in seen]
    if lacking and given.head.get("based_on") != DEMONSTRATION:
        yield _lacking(lacking)


def _lacking(items: Sequence[str]) -> Complaint:
    more = f" and {len(items) - _TOLD_MISSING} more" if len(items) > _TOLD_MISSING else ""
    advice = f"add them, or write `based_on: {DEMONSTRATION}` to take invented prices for them"
    found = f"none for {'; '.join(items[:_TOLD_MISSING])}{more}"
    return Complaint(("prices",), "a price for every item", found, advice)


def _item(row: Mapping[str, Any], path: Path, known: Mapping[str, UnitPrice], seen: set[str]) -> Iterator[Complaint]:
    item, unit = row.get("item"), row.get("unit")
    if not isinstance(item, str) or item not in known:
        advice = did_you_mean(str(item), known, "`outdoor-rooms prices` lists the items")
        yield Complaint((*path, "item"), "an item that the program counts", found_text(item), advice)
        return
    if item in seen:
        yield Complaint((*path, "item"), "each item once", f"{item!r} a second time", "keep one of the two")
    seen.add(item)
    if unit != known[item].unit:
        advice = f"give the price of one {known[item].unit} of it"
        yield Complaint((*path, "unit"), f"the unit {known[item].unit} for {item}", found_text(unit), advice)
    if row.get("words") is not None and not _is_name(row["words"]):
        yield Complaint((*path, "words"), "text on one line", found_text(row["words"]), "shorten it")


def _unit_of(row: Mapping[str, Any], known: Mapping[str, UnitPrice]) -> str:
    """Unit of the item that a row is of; nothing where the program does not count it."""
    item = row.get("item")
    return known[item].unit if isinstance(item, str) and item in known else ""


def _amounts(row: Mapping[str, Any], path: Path, *, is_share: bool) -> Iterator[Complaint]:
    form = _SHARE if is_share else _AMOUNT
    wrong = [name for name in _AMOUNTS if not form.fullmatch(_text(row.get(name)))]
    expected = "a share, such as 0.12" if is_share else "an amount of money of at least 0"
    advice = (
        "write 12 % as 0.12; at most 1, up to four decimals" if is_share else "write digits only, such as 32 or 32.50"
    )
    for name in wrong:
        yield Complaint((*path, name), f"`{name}` as {expected}", found_text(row.get(name)), advice)
    if not wrong:
        price, low, high = (Decimal(_text(row[name])) for name in _AMOUNTS)
        if not low <= price <= high:
            found = f"low {low}, price {price}, high {high}"
            yield Complaint((*path, "price"), "low up to price, price up to high", found, "correct one of the three")


def _text(value: Any) -> str:
    """Digits as written; what is no number is no amount."""
    return "" if isinstance(value, bool) else str(value).removesuffix(".0")


def _is_name(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= LONGEST_NAME and value.isprintable()
