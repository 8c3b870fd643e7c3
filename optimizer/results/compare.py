"""What a stored result says, against what the same layouts give when checked and measured again."""

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from itertools import pairwise
from typing import Any, Final

from optimizer.catalogue import PriceBook
from optimizer.concepts.leading import Standing, leading
from optimizer.results.prices import made_up
from optimizer.scenario import Scenario

TOLERANCE: Final = 0.01
"""Of lengths [ft], points, hours and losses."""
SHARE_TOLERANCE: Final = 0.0005
FROM_THE_SEARCH: Final = frozenset({"id", "rank", "reason", "differs_by"})
"""Of an option: what neither check nor appraisal says of a layout alone."""


def differences(stored: Mapping[str, Any], fresh: Mapping[str, Any]) -> tuple[str, ...]:
    """List what an option's record says and a fresh record of its layout does not; empty where it holds."""
    said = stored["findings"] if _kind(stored) == "sketch" else ()
    found = (
        *_broken_rules(stored["findings"], fresh["findings"], said=said),
        *_unlike("", _measured(stored), _measured(fresh)),
        *_sums(stored["cost"]),
    )
    return tuple(f"{_kind(stored)} {stored['id']}: {words}" for words in found)


def document_differences(document: Mapping[str, Any], scenario: Scenario, book: PriceBook) -> tuple[str, ...]:
    """List what a document says of its scenario, prices and order, and does not hold."""
    concepts = [option for option in document["options"] if option.get("sketch") is None]
    return (
        *carried_differences(document, scenario, book),
        *_gap(document["search"]),
        *_kinds(document["options"]),
        *_ranks([option["rank"] for option in concepts if option["rank"] is not None]),
        *_order([option for option in concepts if None not in (option["rank"], option["proof"])]),
    )


def carried_differences(document: Mapping[str, Any], scenario: Scenario, book: PriceBook) -> tuple[str, ...]:
    """List what a document of whatever kind says of its scenario and prices, and of rooms that have not grown."""
    grown = (words for option in document["options"] for words in _half_grown(option))
    return (*_scenario(document["scenario"], scenario), *_book(document, book), *grown)


def _half_grown(option: Mapping[str, Any]) -> Iterator[str]:
    """Rooms of which only a part is told of where they stood before they grew: nothing is counted by that."""
    for room in option["rooms"]:
        sizes = [room.get(f"base_{side}_ft") for side in ("width", "depth")]
        if None in sizes and any(room.get(f"base_{of}_ft") is not None for of in ("x", "y", "width", "depth")):
            yield f"{_kind(option)} {option['id']}: the {room['name']} has not grown, and a place before that is told"


def _gap(search: Mapping[str, Any]) -> Iterator[str]:
    objective, bound, said = search["objective"], search["bound"], search.get("gap")
    gap = None
    if objective is not None and bound is not None:
        gap = max(0.0, (objective - bound) / objective) if objective > 0 else 0.0
    if (gap is None) != (said is None) or abs((gap or 0.0) - (said or 0.0)) > SHARE_TOLERANCE:
        yield f"the gap of the search is {_worded(said)}, found {_worded(gap)}"


def _ranks(ranks: Sequence[int]) -> Iterator[str]:
    """Concepts are numbered from 1; one that was taken out of a result alone keeps its number."""
    if len(ranks) > 1 and ranks != list(range(1, len(ranks) + 1)):
        yield f"the concepts have the ranks {', '.join(map(str, ranks))}, not 1 to {len(ranks)}"


def _kinds(options: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    """A concept has a rank and a proof, a sketch has neither and comes after all concepts."""
    for option in options:
        is_concept = option.get("sketch") is None
        if is_concept != (option["rank"] is not None) or is_concept != (option["proof"] is not None):
            yield f"{option['id']} has {'no' if is_concept else 'a'} rank or proof, as a {_kind(option)} must not"
    kinds = [_kind(option) for option in options]
    if kinds != sorted(kinds):
        yield "the sketches do not stand after the concepts"


def _kind(option: Mapping[str, Any]) -> str:
    return "concept" if option.get("sketch") is None else "sketch"


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
    said = stored if isinstance(stored, dict) else {"name": book.name, "date": book.date}
    for key in ("name", "date"):
        if said.get(key) != getattr(book, key):
            yield f"the {key} of its prices is {said.get(key)!r} among the versions, found {getattr(book, key)!r}"
    digest = said.get("digest")
    kept = document.get("prices", {"digest": book.digest})
    if {digest, kept.get("digest")} != {book.digest}:
        yield f"the prices are not those of the book {book.name!r} of {book.date} that their digest was made of"
    elif strange := made_up(book):
        yield f"prices that it calls invented are not those that this program has: {', '.join(strange)}"


def _order(options: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    standings = [_standing(option) for option in options]
    lead = leading(standings)
    settled = next((place for place, leader in enumerate(lead) if place != leader), len(lead))
    if settled < len(lead):
        yield from _not_leading(options, standings, settled, lead[settled])
    for number, (better, worse) in enumerate(pairwise(options)):
        if number >= settled and better["score"] > worse["score"] + TOLERANCE:
            yield f"concept {worse['id']} does not rank after concept {better['id']} by its score"
    for option in options:
        proof = option["proof"]
        if proof["bound"] > proof["objective"] + TOLERANCE:
            yield f"concept {option['id']}: its bound of {proof['bound']:g} is above its own {proof['objective']:g}"


def _not_leading(
    options: Sequence[Mapping[str, Any]], standings: Sequence[Standing], place: int, leader: int
) -> Iterator[str]:
    """Why another concept should come at a place; where its score alone says so, the order by score tells it."""
    there, wanted = standings[place], standings[leader]
    if wanted.lacking < there.lacking:
        why = "leaves less out"
    elif wanted.idea != there.idea:
        why = "follows another idea"
    else:
        return
    yield f"concept {options[leader]['id']} does not come as number {place + 1}, though it is near the best and {why}"


def _standing(option: Mapping[str, Any]) -> Standing:
    idea = option.get("idea")
    return Standing(option["score"], len(option["left_out"]), idea["name"] if idea else None)


def _broken_rules(
    stored: Sequence[Mapping[str, Any]], fresh: Sequence[Mapping[str, Any]], *, said: Sequence[Mapping[str, Any]]
) -> Iterator[str]:
    """Broken rules but for those that a sketch says that it breaks, and rules that it says so of and keeps."""
    known = [(finding["rule"], finding["words"]) for finding in said]
    for finding in fresh:
        if (finding["rule"], finding["words"]) not in known:
            yield f"breaks a rule: {finding['sentence']} {finding['words']}"
    again = [(finding["rule"], finding["rooms"]) for finding in fresh]
    for finding in stored:
        if (finding["rule"], finding["rooms"]) not in again:
            yield f"says that it breaks the rule {finding['rule']}, which it keeps"


def _measured(option: Mapping[str, Any]) -> dict[str, Any]:
    """What is compared value by value: broken rules have sentences of their own, and why a room is left out is free."""
    kept = {key: value for key, value in option.items() if key not in {*FROM_THE_SEARCH, "findings"}}
    return {**kept, "left_out": [left["name"] for left in option["left_out"]]}


def _unlike(place: str, stored: object, fresh: object) -> Iterator[str]:
    """Walk two records of one schema: every value that differs, with its place."""
    if isinstance(stored, dict) and isinstance(fresh, dict):
        for key in {**fresh, **stored}:
            inside = f"{place}.{key}" if place else key
            if key in fresh:
                yield from _unlike(inside, stored.get(key), fresh[key])
            else:
                yield f"{inside} is {_worded(stored[key])}, and is not computed"
    elif isinstance(stored, list) and isinstance(fresh, list):
        yield from _unlike_lists(place, stored, fresh)
    elif not _same(place, stored, fresh):
        yield f"{place} is {_worded(stored)}, found {_worded(fresh)}"


def _unlike_lists(place: str, stored: Sequence[Any], fresh: Sequence[Any]) -> Iterator[str]:
    if all(isinstance(entry, str) for entry in (*stored, *fresh)):
        yield from (f"{place} lacks: {entry}" for entry in fresh if entry not in stored)
        yield from (f"{place} has, and should not: {entry}" for entry in stored if entry not in fresh)
        if set(stored) == set(fresh) and list(stored) != list(fresh):
            yield f"{place} has its entries in another order, or twice"
    elif len(stored) != len(fresh):
        yield f"{place} has {len(stored)} entries, found {len(fresh)}"
    else:
        for i, (said, found) in enumerate(zip(stored, fresh, strict=True)):
            yield from _unlike(f"{place}[{_label(found) or i}]", said, found)


def _label(entry: object) -> str:
    """Name an entry by what it is of, where it says so."""
    names = (entry.get(key) for key in ("name", "room", "item")) if isinstance(entry, dict) else ()
    return ", ".join(name for name in names if isinstance(name, str))


def _same(place: str, stored: object, fresh: object) -> bool:
    if isinstance(stored, int | float) and isinstance(fresh, int | float):
        return abs(stored - fresh) <= (SHARE_TOLERANCE if place.endswith("share") else TOLERANCE)
    return stored == fresh


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


def _worded(value: object) -> str:
    if isinstance(value, float):
        return f"{value:,.4f}".rstrip("0").rstrip(".")
    return "nothing" if value is None else str(value)
