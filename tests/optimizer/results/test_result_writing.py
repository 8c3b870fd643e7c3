"""A result is written whole or not at all."""

import csv
import io
import os
import stat
from dataclasses import replace
from pathlib import Path

import pytest

from optimizer.concepts import Idea
from optimizer.errors import OutputError
from optimizer.results.table import csv_table, safe_cell
from optimizer.results.write import ready_folder, to_text, write_whole
from tests.sample_run import sample_option, sample_set


def test_a_file_is_replaced_and_nothing_is_left_beside_it(tmp_path):
    """The new text stands in the old one's place, and the folder holds nothing else."""
    path = tmp_path / "options.json"
    write_whole(path, "old")
    write_whole(path, "new ½\n")
    assert path.read_text(encoding="utf-8") == "new ½\n"
    assert [entry.name for entry in tmp_path.iterdir()] == ["options.json"]


def test_what_fails_on_the_way_leaves_the_old_file(tmp_path, monkeypatch):
    """Where the disk gives out while writing, the old result still stands, and no part of the new one."""
    path = tmp_path / "options.json"
    write_whole(path, "old")

    def full(_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OutputError, match="no space left on device"):
        write_whole(path, "new")
    assert path.read_text(encoding="utf-8") == "old"
    assert [entry.name for entry in tmp_path.iterdir()] == ["options.json"]


def test_a_folder_in_place_of_the_file_is_told(tmp_path):
    """Where the name is taken by a folder there is one message, and the folder stays."""
    (tmp_path / "options.json").mkdir()
    with pytest.raises(OutputError, match="expected a place to write results to"):
        write_whole(tmp_path / "options.json", "new")
    assert [entry.name for entry in tmp_path.iterdir()] == ["options.json"]


def test_others_may_read_what_the_mask_allows(tmp_path):
    """A result has the rights that any new file gets, not those of a private scratch file."""
    (tmp_path / "plain").touch()
    write_whole(tmp_path / "options.json", "text")
    modes = {stat.S_IMODE((tmp_path / name).stat().st_mode) for name in ("plain", "options.json")}
    assert len(modes) == 1


def test_a_folder_is_made_ready(tmp_path):
    """Folders that are missing are made, and the trial leaves nothing in them."""
    ready_folder(tmp_path / "a" / "b")
    assert list((tmp_path / "a" / "b").iterdir()) == []


def test_a_folder_that_cannot_be_is_told(tmp_path):
    """A file in place of the folder gives one message with the path."""
    (tmp_path / "file").touch()
    with pytest.raises(OutputError, match="expected a folder to write results to"):
        ready_folder(tmp_path / "file")
    with pytest.raises(OutputError, match="file/inner"):
        ready_folder(tmp_path / "file" / "inner")


def test_a_folder_without_the_right_to_write_is_told(tmp_path, monkeypatch):
    """Where no file can be made in the folder, that is said before any work begins."""

    def refused(*_, **__):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "touch", refused)
    with pytest.raises(OutputError, match="permission denied"):
        ready_folder(tmp_path)


def test_numbers_that_json_cannot_say_are_not_written():
    """Not a number is no number: better no file than one that no reader takes."""
    with pytest.raises(ValueError, match="JSON"):
        to_text({"score": float("nan")})


def test_the_table_has_a_row_a_concept():
    """The table reads back as one row a concept with the figures of the option."""
    rows = list(csv.DictReader(io.StringIO(csv_table(sample_set().options, currency="USD"))))
    assert [row["rank"] for row in rows] == ["1", "2"]
    assert rows[0]["concept"] == "a1"
    assert rows[0]["cost"] == "23868.97"
    assert (rows[0]["cost_phase_1"], rows[0]["cost_phase_2"]) == ("7768.97", "16100.00")
    assert (rows[0]["walking_ft"], rows[0]["worth"], rows[0]["seats"]) == ("1234.5", "11", "8")
    assert rows[0]["left_out"] == "outdoor kitchen; fire feature; water reserve"
    assert rows[0]["rooms"].startswith("gathering area (")


def test_the_table_has_the_idea():
    """By its name; empty for none."""
    options = (replace(sample_option(), idea=Idea("beside the house", "the table beside the house")), sample_option())
    rows = list(csv.DictReader(io.StringIO(csv_table(options, currency="USD"))))
    assert [row["idea"] for row in rows] == ["beside the house", ""]


@pytest.mark.parametrize("first", ["=", "+", "-", "@", "\t=", "\r\n-"])
def test_no_cell_is_taken_for_a_formula(first):
    """Text that a spreadsheet would run is prefixed, in the table as well."""
    safe = f"'{first.strip()}1+1"
    assert safe_cell(f"{first}1+1") == safe
    option = replace(sample_option(), reason=f"{first}1+1")
    assert next(csv.DictReader(io.StringIO(csv_table((option,), currency="USD"))))["reason"] == safe


def test_an_empty_table_has_its_heading():
    """Without concepts the table is its heading line."""
    assert csv_table((), currency="USD").startswith("rank,concept,currency,cost,")
    assert csv_table((), currency="USD").count("\n") == 1
