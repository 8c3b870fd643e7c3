"""A result carries its prices, so that it can be counted again without their file."""

import json
from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import CostLine
from optimizer.catalogue import UnitPrice, book_for, sized_rooms, with_digest
from optimizer.concepts.case import Case
from optimizer.errors import ResultError
from optimizer.rechecking import recheck
from optimizer.results import document_differences, read_result, to_document
from optimizer.results.schema import from_record, to_record
from optimizer.scenario import read_scenario
from tests.sample_run import sample_scenario, sample_set

DEMO = book_for("USD")
TEXT = f"prices: firm.yaml\n{sample_scenario().text}"


def firm(currency="USD"):
    """A firm's own book: a dearer lawn, nothing invented."""
    prices = tuple(replace(p, price=p.price + 5, high=p.high + 9) if p.item == "lawn" else p for p in DEMO.prices)
    book = replace(DEMO, name="Alder and Sons", currency=currency, prices=prices, invented=())
    return with_digest(book)


def document(book):
    """Document of a run by that book, whose scenario names a file that is not there."""
    scenario = read_scenario(TEXT, "yard.yaml", book)
    return to_document(scenario, sized_rooms(scenario.brief), sample_set(), book=book)


def stored(tmp_path, written):
    """The result of a document."""
    path = tmp_path / "options.json"
    path.write_text(json.dumps(written), encoding="utf-8")
    return read_result(path)


def test_the_book_comes_back_without_its_file(tmp_path):
    """Name, date, digest and every price, for whoever counts again; nothing is amiss."""
    result = stored(tmp_path, document(firm()))
    assert result.scenario.book == firm()
    assert Case.of(result.scenario).book.of("lawn").price == Decimal(8)
    assert result.document["versions"]["price_book"]["name"] == "Alder and Sons"
    assert document_differences(result.document, result.scenario, result.scenario.book) == ()


def test_an_older_result_has_the_demonstration_prices(tmp_path):
    """Where a result carries none; a scenario that names a file then lacks it."""
    written = document(firm())
    del written["prices"]
    with pytest.raises(Exception, match=r"expected the price book firm\.yaml"):
        stored(tmp_path, written)
    written["scenario"]["text"] = sample_scenario().text
    assert stored(tmp_path, written).scenario.book == DEMO


def test_falsified_prices_are_told(tmp_path):
    """A price that its digest was not made of; and one that is called invented, and is not the program's."""
    written = document(firm())
    written["prices"]["prices"][0]["price"] = "30.00"
    result = stored(tmp_path, written)
    (told,) = document_differences(result.document, result.scenario, result.scenario.book)
    assert "the prices are not those of the book 'Alder and Sons'" in told
    result = stored(tmp_path, document(with_digest(replace(firm(), invented=("lawn", "steps")))))
    (told,) = document_differences(result.document, result.scenario, result.scenario.book)
    assert told == "prices that it calls invented are not those that this program has: lawn"


def test_a_recheck_asks_for_the_book_itself(tmp_path):
    """Not for what finish and allowances make of it: that their prices are others is no difference."""
    text = sample_scenario().text.replace("  contingency: 0.15", "  contingency: 0.15\n  allowances: {appliances: out}")
    text = text.replace("level: good", "level: fine")
    scenario = read_scenario(text, "yard.yaml")
    assert Case.of(scenario).book.prices != DEMO.prices
    path = tmp_path / "options.json"
    written = to_document(scenario, sized_rooms(scenario.brief), replace(sample_set(), options=()), book=scenario.book)
    path.write_text(json.dumps(written), encoding="utf-8")
    assert not [words for words in recheck(path) if "prices" in words]


def test_items_that_came_later_have_invented_prices(tmp_path):
    """A book that lacks an item of this program is read, and says that the price of that item is invented."""
    book = firm()
    lesser = with_digest(replace(book, prices=tuple(p for p in book.prices if p.item != "steps")))
    result = stored(tmp_path, document(lesser))
    assert result.scenario.book.of("steps") == DEMO.of("steps")
    assert result.scenario.book.invented == ("steps",)
    assert document_differences(result.document, result.scenario, result.scenario.book) == ()


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"price": "99999.00"}, "0 up to low, price and high"),
        ({"low": "-1.00"}, "0 up to low, price and high"),
        ({"unit": "sq m"}, "a price of unit paving by the sq ft"),
        ({"price": 32}, "money as text"),
    ],
)
def test_prices_that_cannot_be_are_refused(tmp_path, change, words):
    """A result is a file like any other."""
    written = document(firm())
    written["prices"]["prices"][0].update(change)
    with pytest.raises(ResultError, match=words):
        stored(tmp_path, written)


def test_a_book_in_another_currency_must_be_whole(tmp_path):
    """There is no demonstration book to take a price from."""
    euros = firm("EUR")
    written = to_document(
        read_scenario(TEXT.replace("currency: USD", "currency: EUR"), "yard.yaml", euros),
        sized_rooms(sample_scenario().brief),
        sample_set(),
        book=euros,
    )
    assert stored(tmp_path, written).scenario.book.currency == "EUR"
    written["prices"]["prices"].pop(0)
    with pytest.raises(ResultError, match="a price of unit paving"):
        stored(tmp_path, written)


def test_a_share_keeps_its_four_decimals():
    """In the book and on its line, so that a result is counted again to the same cents."""
    share = UnitPrice("poor access", "By hand", "share", Decimal("0.2125"), Decimal("0.15"), Decimal("0.25"))
    line = CostLine(1, "site", "poor access", Decimal(1000), "share", share.price, Decimal("212.50"))
    assert to_record(share)["price"] == to_record(line)["unit_price"] == "0.2125"
    assert [to_record(share)[end] for end in ("low", "high")] == ["0.15", "0.25"]
    assert from_record(UnitPrice, to_record(share), "share") == share
    assert from_record(CostLine, to_record(line), "line") == line
