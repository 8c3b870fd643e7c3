"""All that a result holds comes back: values are made up from the types, so that a field added later is tried by itself."""

import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import MISSING, fields, is_dataclass, replace
from functools import reduce
from operator import getitem
from pathlib import Path
from typing import get_type_hints

import pytest

from optimizer.appraisal import EnclosureMeasures, PartyMeasures
from optimizer.concepts import Option, OptionSet
from optimizer.concepts.budgets import BudgetSet
from optimizer.errors import ResultError
from optimizer.results.forms import EXTRAS, FORMS, LIMITS, NULL_IF_EMPTY, PARTS, PLACES
from optimizer.results.schema import from_record, to_record
from tests.filled import filled
from tests.sample_run import sample_option


def members(value) -> Iterator:
    """Every frozen value in a value, itself too."""
    if is_dataclass(value) or hasattr(value, "_fields"):
        yield value
        for name in get_type_hints(type(value)):
            yield from members(getattr(value, name))
    elif isinstance(value, tuple):
        for entry in value:
            yield from members(entry)


def through_text(record):
    return json.loads(json.dumps(record, allow_nan=False))


STORED = Path(__file__).parent / "stored" / "options-1.json"
FULL, BUDGETS = filled(OptionSet), filled(BudgetSet)
FIRST = replace(FULL, options=FULL.options[:1])
FIRST_WRITTEN = through_text(to_record(FIRST))


def test_every_field_comes_back():
    assert from_record(OptionSet, through_text(to_record(FULL)), "result") == FULL


def test_budgets_come_back():
    """What is written of them is read again, each under the keys of its contract."""
    record = through_text(to_record(BUDGETS))
    assert from_record(BudgetSet, record, "budgets") == BUDGETS
    assert set(record["points"][0]["rooms"][0]) == {"name", "choice"}
    assert {"lowest", "highest", "seconds", "layouts_found"} < set(record["search"])


def test_no_made_up_value_is_the_default_one():
    """Else a field that is lost would not be missed."""
    for value in members(FULL):
        for field in fields(value) if is_dataclass(value) else ():
            default = field.default if field.default is not MISSING else field.default_factory
            assert getattr(value, field.name) not in (default, default() if callable(default) else default), field


def keys_of(record, at=()) -> Iterator[tuple]:
    """Way to every key of a record, at any depth."""
    for key, value in (
        record.items() if isinstance(record, dict) else enumerate(record) if isinstance(record, list) else ()
    ):
        if isinstance(key, str):
            yield (*at, key)
        yield from keys_of(value, (*at, key))


def is_whole_without(way, key) -> bool:
    """Whether a result of one option reads as it was once a key is taken out of its record."""
    less = deepcopy(FIRST_WRITTEN)
    del reduce(getitem, way, less)[key]
    try:
        return from_record(OptionSet, less, "result") == FIRST
    except ResultError:
        return False


def test_every_key_counts():
    """Nothing can be lost but what is written for other readers only."""
    ways = list(keys_of(FIRST_WRITTEN))
    assert len(ways) > 300
    extras = {place.split(".")[-1] for places in EXTRAS.values() for place in places}
    assert {key for *way, key in ways if is_whole_without(way, key)} == extras


def test_what_is_not_computed_is_null():
    """Of the sun no empty list, which would say that it is missed nowhere."""
    option = sample_option()
    option = replace(option, appraisal=replace(option.appraisal, sun_h=()))
    record = through_text(to_record(option))
    assert (record["measures"]["sun"], record["measures"]["steps"], record["differs_by"]) == (None, None, None)
    assert from_record(Option, record, "option") == option


def test_a_result_from_before_a_measure_is_read_without_it():
    """What has a default may lack or be null; a measure that nothing stands for may not."""
    record = through_text(to_record(FULL.options[0]))
    del record["measures"]["enclosure"], record["measures"]["cook"]
    record["measures"]["party"] = record["measures"]["sight"] = record["permits"] = None
    read = from_record(Option, record, "option")
    assert (read.appraisal.enclosure, read.appraisal.party, read.permits) == (EnclosureMeasures(), PartyMeasures(), ())
    assert (read.appraisal.cook, read.appraisal.sight_missed) == ((), ())
    del record["measures"]["worth"]
    with pytest.raises(ResultError, match=r"option\.measures\.worth: expected a value, found nothing"):
        from_record(Option, record, "option")


def is_within(stored, written) -> bool:
    """Whether all that was stored is written, beside what was added since."""
    if isinstance(stored, dict):
        # A rule's sentence is written for readers, from today's list.
        return all(
            key in written and (key == "sentence" or is_within(value, written[key])) for key, value in stored.items()
        )
    if isinstance(stored, list):
        return len(stored) == len(written) and all(map(is_within, stored, written))
    return stored == written


def test_a_stored_result_of_this_format_is_read_whole():
    """A field that is renamed or taken away needs another number of the format, and the way from this one to it."""
    stored = json.loads(STORED.read_text(encoding="utf-8"))
    assert is_within(stored, through_text(to_record(from_record(OptionSet, stored, "stored"))))


def test_two_figures_of_one_name_are_not_written():
    """In an object the second would stand for both."""
    with pytest.raises(ValueError, match="two figures of one name"):
        to_record(replace(FULL.search, terms=(("cost", 1.0), ("cost", 2.0))))


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_numbers_that_json_cannot_say_are_not_written(number):
    with pytest.raises(ValueError, match="JSON has no word"):
        to_record(replace(FULL.search, bound=number))


def test_forms_speak_of_fields_that_there_are():
    """A field that was renamed would silently change its name in the file."""
    for kind, name in (*FORMS, *PARTS, *LIMITS, *NULL_IF_EMPTY):
        assert name in get_type_hints(kind), (kind, name)
    written = [*members(FULL), *members(BUDGETS)]
    for kind, places in (*PLACES.items(), *((kind, {path: path for path in e.values()}) for kind, e in EXTRAS.items())):
        for path in places:
            value = next(value for value in written if isinstance(value, kind))
            assert reduce(getattr, path.split("."), value) is not None, (kind, path)
