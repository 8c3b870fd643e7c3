"""A result held against the check and the appraisal run again, and on demand against the solver asked again."""

import threading
import time
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from optimizer.concepts import Option, OptionSet
from optimizer.concepts.budgets.possible import Possible
from optimizer.concepts.budgets.told import options_again, points_again, steps_again, told_options
from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.recount import Recount
from optimizer.concepts.sketched import sketched_options
from optimizer.concepts.solved_again import Doubt, solved_again
from optimizer.errors import InputError
from optimizer.results import (
    BudgetResult,
    Result,
    carried_differences,
    differences,
    document_differences,
    option_record,
    read_any,
    refuse_other_version,
)
from optimizer.scenario import Scenario
from optimizer.scenario.patch import patched


def recheck(path: Path) -> tuple[str, ...]:
    """What a result says that the check and the appraisal, run again, do not bear out; empty where all holds.

    Raises ResultError for what cannot be read, and for a result of another version of this program.
    """
    result = read_any(path)
    refuse_other_version(result.document, path.name)
    return _budgets(result) if isinstance(result, BudgetResult) else _concepts(result)


def _budgets(result: BudgetResult) -> tuple[str, ...]:
    """The same of what each budget buys."""
    case, found = Case.of(result.scenario).built_at_once(), result.found
    differs = list(carried_differences(result.document, case.scenario, case.book))
    unknown = [place for option in found.options for place in case.unknown(option.layout)]
    if unknown:
        return (*differs, *(f"{p.room} as {p.choice} is not in the catalogue of this scenario" for p in unknown))
    fresh = told_options(case, steps_again(found))
    for said, stored, option in zip(found.options, result.document["options"], fresh, strict=True):
        differs += differences(stored, option_record(case.rooms, option))
        differs += options_again(said, option)
        differs += (f"{said.id}: {finding.words}" for finding in case.water_findings(option))
    return (*differs, *points_again(Possible.of(case, found.highest), found, fresh))


def _concepts(result: Result) -> tuple[str, ...]:
    case = Case.of(result.scenario)
    recount = Recount(case)
    found = list(document_differences(result.document, case.scenario, case.scenario.book))
    found += recount.of_search(result.option_set)
    found += recount.of_conflict(result.option_set.conflict)
    stored = {record["id"]: record for record in result.document["options"]}
    found += _sketches_again(case, result.option_set, stored)
    understood: list[Option] = []
    measured: list[Option] = []
    for option in result.option_set.concepts:
        if unknown := case.unknown(option.layout):
            found += [f"{option.id}: {p.room} as {p.choice} is not in the catalogue of this scenario" for p in unknown]
            continue
        understood.append(option)
        fresh = recount.with_proof(case.advised(case.fresh(option)))
        fresh = replace(fresh, left_out=case.left_out(fresh.layout))
        measured.append(fresh)
        found += differences(stored[option.id], option_record(case.rooms, fresh))
        found += (f"concept {option.id}: {finding.words}" for finding in case.water_findings(fresh))
    found += recount.of_words(understood, measured)
    found += recount.of_concepts(understood, result.option_set.with_without)
    return (*found, *_ways_out_again(result.scenario, result.option_set))


def _ways_out_again(scenario: Scenario, option_set: OptionSet) -> Iterator[str]:
    """Ways out whose patch the scenario's text does not bear."""
    ways = [way for option in option_set.concepts for left in option.left_out for way in left.ways_out]
    ways += option_set.conflict.ways_out if option_set.conflict else ()
    for way in {str(way): way for way in ways}.values():
        try:
            patched(scenario, way.patch)
        except (InputError, LookupError):
            yield f"the way out {way.text!r} is no change of this scenario"


def _sketches_again(case: Case, option_set: OptionSet, stored: Mapping[str, dict[str, Any]]) -> list[str]:
    """What is not as the sketches of the scenario give it, when they are checked and measured once more."""
    fresh = {option.sketch: option for option in sketched_options(case)}
    found = [f"the sketch {name!r} is not in the result" for name in fresh if name not in _names(option_set)]
    for option in option_set.sketches:
        if option.sketch in fresh:
            found += differences(stored[option.id], option_record(case.rooms, fresh[option.sketch]))
        else:
            found.append(f"sketch {option.id}: the scenario has no sketch {option.sketch!r}")
    return found


def _names(option_set: OptionSet) -> frozenset[str | None]:
    return frozenset(option.sketch for option in option_set.sketches)


def solve_again(path: Path, *, seconds: float, stop: threading.Event) -> Iterator[Doubt]:
    """What the solver and the search, asked again, do not bear out or leave undecided, as it is found."""
    result = read_any(path)
    if isinstance(result, BudgetResult):  # its bounds were counted again, and no solver was asked
        return
    clock = Clock(stop, time.monotonic() + seconds)
    yield from solved_again(Case.of(result.scenario), result.option_set, clock)
