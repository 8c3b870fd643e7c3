"""Reading a result file: untrusted input like any other."""

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, NoReturn

from optimizer.concepts import Option, OptionSet
from optimizer.concepts.budgets import BudgetSet
from optimizer.errors import Problem, ResultError
from optimizer.results.prices import stored_book
from optimizer.results.schema import from_record
from optimizer.results.untrusted import refuse
from optimizer.scenario import Scenario, read_scenario

NEWEST: Final = 1
"""Newest number of the options format that this program reads."""
MOST_BYTES: Final = 50_000_000
DEEPEST: Final = 40

_BUDGETS: Final = "outdoor-rooms/budgets/"
_FORMAT: Final = re.compile(r"outdoor-rooms/(options|budgets)/([0-9]{1,9})")


@dataclass(frozen=True, slots=True)
class Result:
    """A result as read: the document itself, the scenario that it carries, and its options."""

    document: dict[str, Any]
    scenario: Scenario
    option_set: OptionSet

    def option(self, option_id: str) -> Option | None:
        """Find the option of that id, or None."""
        return next((option for option in self.option_set.options if option.id == option_id), None)


@dataclass(frozen=True, slots=True)
class BudgetResult:
    """What each budget buys as read: the document itself, the scenario that it carries, and its points."""

    document: dict[str, Any]
    scenario: Scenario
    found: BudgetSet


def read_any(path: Path) -> Result | BudgetResult:
    """Read a result of either kind, concepts or budgets; raises what `read_result` raises."""
    document = _parsed(_bytes(path), path.name)
    written = document.get("format")
    is_of_budgets = isinstance(written, str) and written.startswith(_BUDGETS)
    return _budgets_of(document, path.name) if is_of_budgets else _result_of(document, path.name)


def _budgets_of(document: dict[str, Any], name: str) -> BudgetResult:
    _refuse_other_formats(document.get("format"), name, "budgets")
    scenario = _carried_scenario(document, name)
    found: BudgetSet = from_record(BudgetSet, document, name)
    _refuse_strangers(scenario, found.options, name)
    named = [point.concept for point in found.points]
    if named != [option.id for option in found.options]:
        refuse("a concept for each point, in their order", ", ".join(named), f"{name}.points")
    for i, point in enumerate(found.points):
        _refuse_other_level(scenario, point.level, f"{name}.points[{i}].level")
    return BudgetResult(document, scenario, found)


def read_result(path: Path) -> Result:
    """Read the result of a file.

    Keys that are not known are ignored. Raises ResultError where the file cannot be read, is over 50 MB, is no JSON, is
    of another or a newer format, or a value has the wrong type; ScenarioError where the scenario inside is wrong.
    """
    return result_of(_bytes(path), path.name)


def result_of(data: bytes, name: str) -> Result:
    """Read a result from the bytes of a file of that name; raises what `read_result` raises."""
    return _result_of(_parsed(data, name), name)


def _result_of(document: dict[str, Any], name: str) -> Result:
    _refuse_other_formats(document.get("format"), name, "options")
    scenario = _carried_scenario(document, name)
    option_set: OptionSet = from_record(OptionSet, document, name)
    _refuse_strangers(scenario, option_set.options, name)
    return Result(document, scenario, option_set)


def _bytes(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except OSError as error:
        found = (error.strerror or type(error).__name__).lower()
        advice = "give the options.json that the options command wrote"
        raise ResultError((Problem("a result file", found, advice, where=str(path)),)) from error
    if len(data) > MOST_BYTES:
        refuse("a result of at most 50 MB", f"more than {MOST_BYTES:,} bytes", path.name)
    return data


def _parsed(data: bytes, name: str) -> dict[str, Any]:
    try:
        document = json.loads(data.decode(), parse_constant=_no_constant)
    except RecursionError:
        refuse(f"at most {DEEPEST} levels of nesting", "more", name)
    except ValueError as error:  # also text that is not UTF-8, and numbers of thousands of digits
        raise ResultError(
            (Problem("JSON text in UTF-8", str(error), "give a result as it was written", where=name),)
        ) from (error)
    if not isinstance(document, dict):
        refuse("an object", document, name)
    if _is_deeper(document, DEEPEST):
        refuse(f"at most {DEEPEST} levels of nesting", "more", name)
    return document


def _no_constant(word: str) -> NoReturn:
    raise ValueError(f"{word} is no number")


def _is_deeper(value: object, levels: int) -> bool:
    """Whether a value nests deeper than so many levels."""
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return bool(inner) and (levels == 0 or any(_is_deeper(item, levels - 1) for item in inner))


def _refuse_other_formats(written: object, name: str, kind: str) -> None:
    number = _FORMAT.fullmatch(written) if isinstance(written, str) else None
    if number is None or number[1] != kind:
        refuse(f"format outdoor-rooms/{kind}/{NEWEST}", written, f"{name}.format")
    if int(number[2]) > NEWEST:
        advice = "read it with the newer program that wrote it"
        refuse(f"format number {NEWEST} at most", written, f"{name}.format", advice=advice)


def _carried_scenario(document: Mapping[str, Any], name: str) -> Scenario:
    text, book = _carried_text(document, name), stored_book(document, name)
    return read_scenario(text, f"{name}: scenario.text", book)


def _carried_text(document: Mapping[str, Any], name: str) -> str:
    carried = document.get("scenario")
    text = carried.get("text") if isinstance(carried, dict) else None
    return text if isinstance(text, str) else refuse("the text of a scenario", text, f"{name}.scenario.text")


def _refuse_strangers(scenario: Scenario, options: Sequence[Option], name: str) -> None:
    """Refuse rooms that the scenario in the same file does not know, and ids that occur twice."""
    seen: set[str] = set()
    for i, option in enumerate(options):
        if option.id in seen:
            refuse("ids that differ", option.id, f"{name}.options[{i}].id")
        seen.add(option.id)
        _refuse_other_level(scenario, option.level, f"{name}.options[{i}].finish_level")
        for j, place in enumerate(option.layout.placements):
            if scenario.brief.room(place.room) is None:
                refuse("a room of the scenario", place.room, f"{name}.options[{i}].rooms[{j}].name")


def _refuse_other_level(scenario: Scenario, level: str | None, where: str) -> None:
    if level not in {None, *(known.name for known in scenario.brief.finish_levels)}:
        refuse("a finish level of the scenario", level, where)
