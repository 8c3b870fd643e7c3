"""What is written is what is read back, and nothing in it is invented."""

import json
from dataclasses import replace
from decimal import Decimal

from optimizer.catalogue import book_for
from optimizer.concepts import Option
from optimizer.layout import Layout
from optimizer.results.document import FORMAT
from optimizer.results.forms import money
from optimizer.results.read import read_result
from optimizer.results.schema import from_record
from optimizer.results.versions import catalogue_digest, versions
from optimizer.results.write import to_text
from tests.sample_run import NOTHING_FITS, sample_document, sample_option, sample_set

TOP_KEYS = {"format", "scenario", "versions", "search", "conflict", "options"}
OPTION_KEYS = {
    *("id", "rank", "score", "reason", "rooms", "left_out", "paths", "cost", "measures"),
    *("findings", "cautions", "proof", "differs_by"),
}
ROOM_KEYS = {
    *("name", "kind", "choice", "phase", "x_ft", "y_ft", "width_ft", "depth_ft", "front", "shape", "seats", "level_ft"),
    *("base_width_ft", "base_depth_ft"),
}


def test_the_keys_of_the_contract_are_there():
    """Every key that the contract names is in the document."""
    document = sample_document()
    assert document["format"] == FORMAT == "outdoor-rooms/options/1"
    assert document.keys() >= TOP_KEYS
    option = document["options"][0]
    assert option.keys() >= OPTION_KEYS
    assert all(room.keys() >= ROOM_KEYS for room in option["rooms"])
    assert option["cost"].keys() >= {"total", "low", "high", "phases", "lines"}
    assert option["proof"].keys() >= {"arrangement", "objective", "bound"}
    assert document["search"]["gap"] == (30_500 - 24_400) / 30_500


def test_options_come_back_as_they_were(tmp_path):
    """Every figure of every option survives writing and reading, to the last digit."""
    path = tmp_path / "options.json"
    path.write_text(to_text(sample_document()), encoding="utf-8")
    result = read_result(path)
    assert result.option_set == sample_set()
    assert result.option("a2") == sample_set().options[1]
    assert result.option("none") is None


def test_a_grown_room_has_both_its_sizes(tmp_path):
    """Its own and the one that its choice has, null where it has not grown; both come back."""
    path, option = tmp_path / "options.json", sample_option()
    first, second = option.layout.placements
    grown = replace(option, layout=Layout((first.grown_to("-x", first.x_ft - 1.5), second)))
    document = sample_document(replace(sample_set(), options=(grown,)))
    sizes = [(room["width_ft"] - (room["base_width_ft"] or 0)) for room in document["options"][0]["rooms"]]
    assert sizes == [1.5, second.width_ft]
    path.write_text(to_text(document), encoding="utf-8")
    assert read_result(path).option_set.options == (grown,)


def test_a_result_stands_alone(tmp_path):
    """The scenario comes out of the result's own text, with the same digest."""
    path = tmp_path / "options.json"
    document = sample_document()
    path.write_text(to_text(document), encoding="utf-8")
    scenario = read_result(path).scenario
    assert scenario.digest == document["scenario"]["digest"]
    assert scenario.brief.room("quiet nook") is not None


def test_why_nothing_fits_comes_back(tmp_path):
    """A run without a concept is written and read with its reason, and with null for what it has not."""
    path = tmp_path / "options.json"
    document = sample_document(NOTHING_FITS)
    assert document["search"]["objective"] is None
    assert document["conflict"]["ways_out"] == []
    path.write_text(to_text(document), encoding="utf-8")
    assert read_result(path).option_set == NOTHING_FITS


def test_keys_that_are_not_known_are_ignored():
    """A key that a later program added to an option does no harm."""
    record = sample_document()["options"][0]
    record["mood"] = {"calm": True}
    assert from_record(Option, record, "options[0]") == sample_set().options[0]


def test_money_has_two_decimals():
    """Money is text with exactly two decimals, without thousands marks."""
    assert [money(Decimal(text)) for text in ("1234567", "0.5", "12.345")] == ["1234567.00", "0.50", "12.34"]


def test_versions_name_libraries_prices_and_catalogue():
    """The block names what made the result; the digest of the catalogue's files is a SHA-256."""
    block = versions(book_for("USD"))
    assert {"optimizer", "ortools", "shapely", "numpy", "pvlib", "python", "price_book", "catalogue"} == block.keys()
    assert all(isinstance(block[name], str) for name in ("ortools", "shapely", "numpy", "python"))
    assert block["price_book"]["digest"] == book_for("USD").digest
    assert len(catalogue_digest()) == 64
    assert json.loads(json.dumps(block)) == block
