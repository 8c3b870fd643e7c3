"""A result file may hold anything: it is read, or refused with one clear message."""

import json
from functools import reduce
from itertools import cycle
from operator import getitem

import pytest

from optimizer.concepts import OptionSet
from optimizer.errors import InputError, ResultError
from optimizer.results import read
from optimizer.results.schema import from_record, to_record
from optimizer.results.untrusted import shown
from tests.filled import filled, places_of
from tests.sample_run import sample_document


def refusal(tmp_path, content) -> str:
    """Message with which a file of this content is refused."""
    path = tmp_path / "options.json"
    path.write_bytes(content if isinstance(content, bytes) else json.dumps(content).encode())
    with pytest.raises(InputError) as caught:
        read.read_result(path)
    assert len(caught.value.problems) == 1
    return str(caught.value)


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "JSON text"),
        (b"\xff\xfe{}", "JSON text in UTF-8"),
        (b"[1, 2", "JSON text"),
        (b"[1, 2]", "expected an object, found a list of 2"),
        (b'{"format": NaN}', "NaN is no number"),
        (b"[" * 100_000, "levels of nesting"),
        (b'{"a":' * 60 + b"1" + b"}" * 60, "at most 40 levels of nesting"),
        (b'{"format": 1' + b"0" * 5000 + b"}", "JSON text"),
        (b"{}", "options.json.format: expected format outdoor-rooms/options/1, found nothing"),
        (b'{"format": "something/else/1"}', "expected format outdoor-rooms/options/1"),
    ],
)
def test_what_is_no_result_is_refused(tmp_path, content, words):
    """Text that is no JSON, is nested without end, or is something else, gives one message and no crash."""
    assert words in refusal(tmp_path, content)


def test_a_newer_format_is_refused_by_name(tmp_path):
    """The message names the number found and the newest that is read."""
    message = refusal(tmp_path, {**sample_document(), "format": "outdoor-rooms/options/2"})
    assert "outdoor-rooms/options/2" in message
    assert "format number 1 at most" in message


def test_a_file_that_is_too_large_is_refused(tmp_path, monkeypatch):
    """What is over the limit is not parsed."""
    monkeypatch.setattr(read, "MOST_BYTES", 1000)
    assert "at most 50 MB" in refusal(tmp_path, sample_document())


@pytest.mark.parametrize("name", [".", "missing.json"])
def test_a_folder_or_a_missing_file_is_refused(tmp_path, name):
    """A folder in place of a file, and a file that is not there, each give one message with the path."""
    with pytest.raises(ResultError) as caught:
        read.read_result(tmp_path / name)
    assert str(tmp_path) in str(caught.value)
    assert "a result file" in str(caught.value)


@pytest.mark.parametrize(
    ("where", "value", "words"),
    [
        (("rank",), "first", "options[0].rank: expected a whole number"),
        (("rank",), True, "options[0].rank: expected a whole number"),
        (("score",), None, "options[0].score: expected a number, found nothing"),
        (("score",), 10**400, "options[0].score: expected a number"),
        (("id",), "../a1", "options[0].id: expected letters"),
        (("id",), "", "options[0].id: expected letters"),
        (("reason",), "x" * 30_000, "options[0].reason: expected text"),
        (("rooms",), {}, "options[0].rooms: expected a list"),
        (("rooms", 0), [], "options[0].rooms[0]: expected an object"),
        (("rooms", 0, "x_ft"), "12", "options[0].rooms[0].x_ft: expected a number"),
        (("rooms", 0, "x_ft"), 1e9, "options[0].rooms[0].x_ft: expected a number of at most 100000"),
        (("rooms", 0, "width_ft"), -4, "options[0].rooms[0].width_ft: expected a size above 0"),
        (("rooms", 0, "front"), "north", "options[0].rooms[0].front: expected +x | -x | +y | -y"),
        (("rooms", 0, "name"), "ballroom", "options[0].rooms[0].name: expected a room of the scenario"),
        (("cost", "total"), 23868.97, "options[0].cost.total: expected money as text"),
        (("cost", "total"), "NaN", "options[0].cost.total: expected money as text"),
        (
            ("cost", "lines", 0, "quantity"),
            1e10,
            "options[0].cost.lines[0].quantity: expected a number of at most 1e+09",
        ),
        (("cost", "lines", 0, "unit_price"), "1" * 13 + ".00", "options[0].cost.lines[0].unit_price: expected money"),
        (("cost", "phases"), {"one": "1.00"}, "options[0].cost.phases.one: expected a whole number"),
        (("paths", 0, "points", 1), [1, 2, 3], "options[0].paths[0].points[1]: expected at most 2 entries"),
        (("paths", 0, "between"), ["a"], "options[0].paths[0].between[1]: expected a value"),
        (("measures", "sight", "missed"), [["a", 1]], "options[0].measures.sight.missed[0][1]: expected text"),
        (("proof", "arrangement"), "certain", "options[0].proof.arrangement: expected proven | bounded"),
        (("findings",), [{"rule": "no_fun"}], "options[0].findings[0].rule: expected required_rooms"),
    ],
)
def test_a_value_of_the_wrong_type_is_named_with_its_place(tmp_path, where, value, words):
    """One wrong value in a whole result gives one message that says where it is and what belongs there."""
    document = sample_document()
    inner = document["options"][0]
    for key in where[:-1]:
        inner = inner[key]
    inner[where[-1]] = value
    assert words in refusal(tmp_path, document)


HOSTILE = (
    None, True, -1, 2**70, 10**400, 1e300, "", "x" * 30_000, "\ud800", "NaN", [], [[]] * 20_000, {}, {"": {}}, [1, "a", None]
)  # fmt: skip


def test_whatever_stands_anywhere_is_read_or_refused():
    """In every place of a whole result, something else: never anything but a value of the type or one report."""
    record = to_record(filled(OptionSet))
    places = list(places_of(record))
    reports = []
    for i, (place, value) in enumerate(zip(places, cycle(HOSTILE), strict=False)):
        # Also in place of what the value is in.
        *way, last = place[: 1 + i % len(place)]
        around = reduce(getitem, way, record)
        before, around[last] = around[last], value
        try:
            from_record(OptionSet, record, "options.json")
        except ResultError as error:
            reports.append(error)
        around[last] = before
    assert len(reports) > len(places) / 2
    assert all(len(report.problems) == 1 and len(str(report)) < 1000 for report in reports)


def test_ids_that_occur_twice_are_refused(tmp_path):
    """Two concepts of one id could not be told apart."""
    document = sample_document()
    document["options"][1]["id"] = "a1"
    assert "expected ids that differ" in refusal(tmp_path, document)


def test_a_wrong_scenario_inside_is_told_as_such(tmp_path):
    """The message names the file, the text inside it and the place in that text."""
    document = sample_document()
    document["scenario"]["text"] = "schema_version: 1\nname: [\n"
    assert refusal(tmp_path, document).startswith("options.json: scenario.text:")


def test_values_in_messages_are_short():
    """A value in a message takes at most 60 characters of one line."""
    assert len(shown("x\n" * 500)) == 60
    assert "\n" not in shown("x\n" * 500)
    assert shown(None) == "nothing"
