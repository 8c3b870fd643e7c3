"""What a stored result says, against what the same layouts give when checked and measured again."""

import hashlib
from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from itertools import pairwise
from typing import Any, Final

from optimizer.catalogue import PriceBook
from optimizer.scenario import Scenario

MONEY_TOLERANCE: Final = 0.005
TOLERANCE: Final = 0.01
"""Of lengths [ft], points and hours."""
SHARE_TOLERANCE: Final = 0.0005

_ROOM_FACTS: Final = ("kind", "phase", "shape", "seats")
_LINE_FACTS: Final = ("phase", "room", "item", "unit")
_LINE_FIGURES: Final = ("quantity", "unit_price", "amount")


def differences(stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> tuple[str, ...]:
    """List what an option's record says and a fresh record of its layout does not; empty where it holds.

    Rank, reason, proof and difference to others come from a search and are not compared.
    """
    found = (
        *_broken_rules(stored, fresh),
        *_rooms(stored, fresh),
        *_costs(stored["cost"], fresh["cost"]),
        *_sums(stored["cost"]),
        *_figures("measure", stored["measures"], fresh["measures"]),
        *_figures("loss", stored["losses"], fresh["losses"]),
        *_figures("figure", {"score": stored["score"]}, {"score": fresh["score"]}),
        *_paths(stored["paths"], fresh["paths"]),
        *_legs(stored.get("legs"), fresh["legs"]),
        *(f"does not show the caution: {words}" for words in fresh["cautions"] if words not in stored["cautions"]),
    )
    return tuple(f"concept {stored['id']}: {words}" for words in found)


def document_differences(document: Mapping[str, Any], scenario: Scenario, book: PriceBook) -> tuple[str, ...]:
    """List what a document says of its scenario, prices and order, and does not hold."""
    return (*_scenario(document["scenario"], scenario), *_book(document, book), *_order(document["options"]))


def _scenario(stored: Mapping[str, Any], scenario: Scenario) -> Iterator[str]:
    # Of the text itself, whatever the digest that goes with it says.
    digest = hashlib.sha256(scenario.text.encode()).hexdigest()
    if stored.get("digest") != digest:
        yield "the scenario's text is not the one that its digest was made of"
    for key in ("name", "units", "currency"):
        if stored.get(key) != getattr(scenario, key):
            yield f"the scenario's {key} is {getattr(scenario, key)!r} in its text and {stored.get(key)!r} beside it"


def _book(document: Mapping[str, Any], book: PriceBook) -> Iterator[str]:
    versions = document.get("versions")
    stored = versions.get("price_book") if isinstance(versions, dict) else None
    digest = stored.get("digest") if isinstance(stored, dict) else None
    if digest != book.digest:
        yield f"the prices are not those of the book {book.name!r} of {book.date} that this program has"


def _order(options: list[Mapping[str, Any]]) -> Iterator[str]:
    for better, worse in pairwise(options):
        if better["rank"] >= worse["rank"] or better["score"] > worse["score"] + TOLERANCE:
            yield f"concept {worse['id']} does not rank after concept {better['id']} by its score"
    for option in options:
        proof = option["proof"]
        if proof["bound"] > proof["objective"] + TOLERANCE:
            yield f"concept {option['id']}: its bound of {proof['bound']:g} is above its own {proof['objective']:g}"


def _broken_rules(stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> Iterator[str]:
    for finding in fresh["findings"]:
        yield f"breaks a rule: {finding['sentence']} {finding['words']}"
    again = [(finding["rule"], finding["rooms"]) for finding in fresh["findings"]]
    for finding in stored["findings"]:
        if (finding["rule"], finding["rooms"]) not in again:
            yield f"says that it breaks the rule {finding['rule']}, which it keeps"


def _rooms(stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> Iterator[str]:
    ours, theirs = ({room["name"]: room for room in option["rooms"]} for option in (stored, fresh))
    for name, room in theirs.items():
        for fact in _ROOM_FACTS:
            if (said := ours.get(name, {}).get(fact)) != room[fact]:
                yield f"{name} has {fact} {_worded(said)}, found {_worded(room[fact])}"
    said_out, found_out = ({left["name"] for left in option["left_out"]} for option in (stored, fresh))
    for name in sorted(found_out - said_out):
        yield f"{name} is not placed, and is not named among what is left out"
    for name in sorted(said_out - found_out):
        yield f"{name} is named among what is left out, and is placed or not in the brief"


def _costs(stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> Iterator[str]:
    for part in ("total", "low", "high"):
        yield from _money(f"the cost ({part})", stored[part], fresh[part])
    for phase in sorted({*stored["phases"], *fresh["phases"]}):
        yield from _money(f"phase {phase}", stored["phases"].get(phase, "0.00"), fresh["phases"].get(phase, "0.00"))
    if len(stored["lines"]) != len(fresh["lines"]):
        yield f"the cost sheet has {len(stored['lines'])} lines, found {len(fresh['lines'])}"
        return
    for said, found in zip(stored["lines"], fresh["lines"], strict=True):
        yield from _line(said, found)


def _line(stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> Iterator[str]:
    name = f"the line {fresh['room']}, {fresh['item']},"
    for fact in _LINE_FACTS:
        if stored[fact] != fresh[fact]:
            yield f"{name} has {fact} {_worded(stored[fact])}, found {_worded(fresh[fact])}"
    for figure in _LINE_FIGURES:
        if abs(float(stored[figure]) - float(fresh[figure])) > MONEY_TOLERANCE:
            yield f"{name} has {figure} {stored[figure]}, found {fresh[figure]}"


def _money(name: str, stored: str, fresh: str) -> Iterator[str]:
    if abs(Decimal(stored) - Decimal(fresh)) > Decimal(str(MONEY_TOLERANCE)):
        yield f"{name} is {stored}, found {fresh}"


def _sums(cost: Mapping[str, Any]) -> Iterator[str]:
    for line in cost["lines"]:
        product = Decimal(repr(line["quantity"])) * Decimal(line["unit_price"])
        if not _rounds_to(product, Decimal(line["amount"])):
            yield f"{line['room']}, {line['item']}: {line['quantity']:g} x {line['unit_price']} is not {line['amount']}"
    if sum(map(Decimal, cost["phases"].values())) != Decimal(cost["total"]):
        yield f"its phases do not add up to the total of {cost['total']}"


def _rounds_to(product: Decimal, amount: Decimal) -> bool:
    cent = Decimal("0.01")
    return amount in {product.quantize(cent, ROUND_HALF_UP), product.quantize(cent, ROUND_HALF_EVEN)}


def _figures(word: str, stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> Iterator[str]:
    for name, found in fresh.items():
        tolerance = SHARE_TOLERANCE if name.endswith("_share") else TOLERANCE
        if not same(stored.get(name), found, tolerance=tolerance):
            yield f"the {word} {name} is {_worded(stored.get(name))}, found {_worded(found)}"
    for name in stored:
        if name not in fresh:
            yield f"the {word} {name} is not one that is computed"


def _paths(stored: list[Any], fresh: list[Any]) -> Iterator[str]:
    if len(stored) != len(fresh):
        yield f"it has {len(stored)} paths, found {len(fresh)}"
        return
    for said, found in zip(stored, fresh, strict=True):
        if not same({key: said.get(key) for key in found}, found, tolerance=TOLERANCE):
            yield f"the path between {' and '.join(found['between'])} runs otherwise"


def _legs(stored: list[Any] | None, fresh: list[Any]) -> Iterator[str]:
    if stored is not None and not same(stored, fresh, tolerance=TOLERANCE):
        yield "the paved legs of its ways run otherwise"


def same(one: object, other: object, *, tolerance: float) -> bool:
    """Whether two plain values are the same, numbers within `tolerance`."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key], tolerance=tolerance) for key in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(same(a, b, tolerance=tolerance) for a, b in zip(one, other, strict=True))
    if isinstance(one, int | float) and isinstance(other, int | float):
        return abs(one - other) <= tolerance
    return one == other


def _worded(value: object) -> str:
    if isinstance(value, float):
        return f"{value:,.4f}".rstrip("0").rstrip(".")
    return "nothing" if value is None else str(value)
