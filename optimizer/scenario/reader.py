"""Reading a scenario: text to values, values to schema, cross checks, and all that is wrong told at once."""

import hashlib
import re
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path as FilePath
from typing import Any, Final

from pydantic import ValidationError

from optimizer.catalogue import PriceBook, book_for, has_demo_book
from optimizer.errors import Problem, ScenarioError
from optimizer.scenario.build import build_brief, build_site, build_sketch
from optimizer.scenario.catalogue_checks import catalogue_complaints
from optimizer.scenario.circle_checks import circle_complaints
from optimizer.scenario.complaints import complaints_of, is_unknown_key
from optimizer.scenario.document import Complaint, Document, Path, read_document
from optimizer.scenario.files import LARGEST_BYTES, encoded, text_of, too_large
from optimizer.scenario.finish_build import finish_complaints
from optimizer.scenario.hold_checks import hold_complaints
from optimizer.scenario.price_books import beside, load_price_book
from optimizer.scenario.relation_checks import relation_complaints
from optimizer.scenario.room_checks import room_complaints
from optimizer.scenario.scenario import Scenario
from optimizer.scenario.schema import ScenarioPart, is_newer
from optimizer.scenario.site_checks import site_complaints
from optimizer.scenario.sketch_checks import sketch_complaints
from optimizer.units import feet_from_metres

MOST_CELLS: Final = 2_000_000
PRICES: Final = "prices"
CURRENCY: Final = re.compile("[A-Z]{3}")
_WIDEST_STEP_FT: Final = 10.0
"""Beyond the depth of small rooms hardly any place is left on the grid; common practice, no source."""
FindBook = Callable[[str, str | None], PriceBook | None]
"""Finds the price book for a currency and the file that the scenario names."""


def load_scenario(path: FilePath | str, prices: FilePath | None = None) -> Scenario:
    """Read and check a scenario file with its price book: the one at `prices`, else the one that it names beside it.

    Raises
    ------
    ScenarioError
        With every problem found in either, each with file:line:column.
    """
    name = str(path)
    text = text_of(FilePath(path), name)
    return _scenario(text, name, lambda currency, named: _book(FilePath(path), prices, named, currency))


def read_scenario(text: str, name: str, book: PriceBook | None = None) -> Scenario:
    """Read and check the text of a scenario; `name` stands for the file in messages. No other file is read: `book` is
    what it is priced by, None for the demonstration prices.

    Raises
    ------
    ScenarioError
        With every problem found, each with file:line:column.
    """
    return _scenario(text, name, lambda currency, named: _given(book, named, name, currency))


def _scenario(text: str, name: str, find_book: FindBook) -> Scenario:
    if len(encoded(text, name)) > LARGEST_BYTES:
        raise ScenarioError((too_large(name),))
    document = read_document(text, name)
    book, wrong = _found(document, find_book)
    part = _checked(document, wrong)
    return Scenario(
        name=part.name,
        units=part.units,
        currency=part.currency,
        site=build_site(part.site),
        brief=build_brief(part),
        sketches=tuple(build_sketch(sketch) for sketch in part.sketches),
        text=text,
        digest=hashlib.sha256(encoded(text, name)).hexdigest(),
        prices=book,
    )


def _found(document: Document, find_book: FindBook) -> tuple[PriceBook | None, tuple[Problem, ...]]:
    """The price book, and what is wrong with it, so that both files are told of at once."""
    data = document.data if isinstance(document.data, dict) else {}
    currency, named = data.get("currency", "USD"), data.get("prices")
    if not (isinstance(currency, str) and CURRENCY.fullmatch(currency)) or not isinstance(named, str | None):
        return None, ()  # the schema says so
    try:
        return find_book(currency, named), ()
    except ScenarioError as error:
        return None, tuple(_at_key(document, problem) for problem in error.problems)


def _at_key(document: Document, problem: Problem) -> Problem:
    """A problem of no file, or of a key alone, lies at that key of the scenario."""
    if problem.where not in ("", "currency"):
        return problem
    path: Path = (problem.where or PRICES,)
    return document.problem(Complaint(path, problem.expected, problem.found, problem.advice))


def _book(scenario: FilePath, prices: FilePath | None, named: str | None, currency: str) -> PriceBook | None:
    if prices is not None:
        return load_price_book(prices, currency)
    if named is not None:
        return load_price_book(beside(scenario, named), currency)
    return _demonstration(currency)


def _demonstration(currency: str) -> PriceBook | None:
    """None stands for the demonstration prices; ScenarioError where there are none."""
    return None if has_demo_book(currency) else book_for(currency)


def _given(book: PriceBook | None, named: str | None, name: str, currency: str) -> PriceBook | None:
    if book is not None:
        return book
    if named is not None:
        advice = "read the scenario's file, beside which it lies, or take `prices` away"
        raise ScenarioError((Problem(f"the price book {named}", f"the text of {name} alone", advice),))
    return _demonstration(currency)


def _checked(document: Document, wrong: Sequence[Problem]) -> ScenarioPart:
    """Give what a document holds, once nothing is wrong with it or its price book."""
    part, schema_complaints = _validated(document.data)
    complaints = (*document.complaints, *schema_complaints, *(_cross_checks(part) if part else ()))
    if complaints or wrong or part is None:
        in_order = sorted(complaints, key=document.place)
        raise ScenarioError((*(document.problem(complaint) for complaint in in_order), *wrong))
    return part


def _validated(data: Any) -> tuple[ScenarioPart | None, tuple[Complaint, ...]]:
    """Scenario as the schema sees it, and what is wrong; both where nothing but unknown keys is in the way."""
    context = {"unit_ft": feet_from_metres(1.0) if isinstance(data, dict) and data.get("units") == "m" else 1.0}
    try:
        return ScenarioPart.model_validate(data, context=context), ()
    except ValidationError as error:
        details = error.errors(include_url=False)
        complaints = complaints_of(error)
    if isinstance(data, dict) and is_newer(data.get("schema_version")):
        # In another version other keys are right: complaining of them would mislead.
        return None, tuple(complaint for complaint in complaints if complaint.path == ("schema_version",))
    unknown = {detail["loc"] for detail in details if is_unknown_key(detail)}
    if len(unknown) < len(details):
        return None, complaints
    return ScenarioPart.model_validate(_without(data, unknown, ()), context=context), complaints


def _without(value: Any, unknown: set[Path], path: Path) -> Any:
    """Give the same values less the keys at some paths."""
    if isinstance(value, dict):
        kept = {key: inner for key, inner in value.items() if (*path, key) not in unknown}
        return {key: _without(inner, unknown, (*path, key)) for key, inner in kept.items()}
    if isinstance(value, tuple):
        return tuple(_without(inner, unknown, (*path, index)) for index, inner in enumerate(value))
    return value


def _cross_checks(part: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about how the parts of a scenario fit together."""
    yield from site_complaints(part)
    yield from room_complaints(part)
    yield from relation_complaints(part)
    yield from hold_complaints(part)
    yield from sketch_complaints(part)
    yield from circle_complaints(part)
    yield from catalogue_complaints(part)
    yield from finish_complaints(part)
    yield from _cells(part)


def _cells(part: ScenarioPart) -> Iterator[Complaint]:
    """Refuse a grid of more cells than the fields can hold."""
    step = build_brief(part).options.grid_step
    step_ft = step if part.units == "ft" else feet_from_metres(step)
    xs, ys = zip(*part.site.boundary.corners, strict=True)
    cells = (max(xs) - min(xs)) / step_ft * ((max(ys) - min(ys)) / step_ft)
    path: Path = ("options", "grid_step")
    if step_ft > _WIDEST_STEP_FT:
        found = f"{step_ft:,.6g} ft"
        yield Complaint(
            path, f"a grid_step of at most {_WIDEST_STEP_FT:g} ft", found, "rooms lie on the grid: take 1 ft"
        )
    if cells > MOST_CELLS:
        yield Complaint(path, f"at most {MOST_CELLS:,} grid cells", f"{cells:,.0f}", "take a larger grid_step")
