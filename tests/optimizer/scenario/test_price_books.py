"""A firm's own price book beside a scenario."""

import csv
import io

import pytest

from optimizer.catalogue import book_for
from optimizer.errors import ScenarioError
from optimizer.results.price_table import price_table
from optimizer.scenario import load_scenario, read_scenario
from optimizer.scenario.price_books import load_price_book, read_price_book
from tests.small_yard import SMALL, changed

PARTIAL = """\
name: Alder and Sons
date: "2026-10"
region: the valley
currency: USD
based_on: demonstration prices
prices:
  - {item: unit paving, unit: sq ft, price: 40, low: 34, high: 46}
  - {item: lawn, unit: sq ft, price: 2.5, low: 2, high: 3, words: Turf}
"""
TEMPLATE = price_table(book_for("USD"))
WHOLE = TEMPLATE.replace(book_for("USD").name, "Birch")
NAMED = f"prices: firm.yaml\n{SMALL}"


def problems(read):
    """Problems that a call raises."""
    with pytest.raises(ScenarioError) as caught:
        read()
    return [str(problem) for problem in caught.value.problems]


def of_book(text, name="firm.yaml", currency="USD"):
    """Problems of a price book's text."""
    return problems(lambda: read_price_book(text, name, currency))


def rows_with(**changes):
    """The whole book as a table, with cells of some item's row changed by column."""
    rows = list(csv.DictReader(io.StringIO(WHOLE)))
    for row in rows:
        row.update(changes.get(row["item"].replace(" ", "_"), {}))
    text = io.StringIO()
    writer = csv.DictWriter(text, rows[0])
    writer.writeheader()
    writer.writerows(rows)
    return text.getvalue()


@pytest.fixture
def yard(tmp_path):
    """A scenario that names a price book, both in one folder."""
    (tmp_path / "firm.yaml").write_text(PARTIAL)
    (tmp_path / "yard.yaml").write_text(NAMED)
    return tmp_path / "yard.yaml"


def test_a_partial_book_takes_the_rest_from_the_demonstration():
    """Its own prices are the firm's, all others the invented ones, and it says how many."""
    book, demo = read_price_book(PARTIAL, "firm.yaml", "USD"), book_for("USD")
    assert [float(book.of("unit paving").price), float(book.of("lawn").high)] == [40, 3]
    assert book.of("lawn").words == "Turf"
    assert book.of("steps") == demo.of("steps")
    assert set(book.invented) == {price.item for price in demo.prices} - {"unit paving", "lawn"}
    assert f"{len(book.invented)} of its {len(demo.prices)} prices are invented" in book.said
    assert book.digest != demo.digest


def test_a_whole_book_has_no_invented_price():
    """The demonstration prices as a table are a whole book; in another currency too, where there are no others."""
    book = read_price_book(rows_with(), "firm.csv", "USD")
    assert (book.prices, book.invented, book.date) == (book_for("USD").prices, (), "2026-09")
    assert book.said == "Prices: Birch, of 2026-09."
    euros = read_price_book(WHOLE.replace(",USD,", ",EUR,"), "firm.csv", "EUR")
    assert (euros.currency, len(euros.prices)) == ("EUR", len(book.prices))
    assert read_scenario(changed("currency: USD", "currency: EUR"), "yard.yaml", euros).book == euros


def test_yaml_and_csv_say_the_same():
    """The same prices in both forms are the same book but for the name."""
    text = "item,unit,price,low,high,words,name,date,region,currency,based_on\n"
    head = "Alder and Sons,2026-10,the valley,USD,demonstration prices"
    text += f"unit paving,sq ft,40,34,46,,{head}\nlawn,sq ft,2.50,2,3,Turf,{head}\n"
    assert read_price_book(text, "other.csv", "USD") == read_price_book(PARTIAL, "firm.yaml", "USD")


def test_demonstration_prices_are_no_firms_own():
    """What is written to be filled in is not taken as it is: its prices would look like a firm's own."""
    told = of_book(TEMPLATE, "firm.csv")
    assert [one for one in told if "firm.csv:2:10: expected a name of your own" in one]


def test_a_firms_book_comes_back_from_a_table():
    """A partial one as partial, with the same digest; a whole one whole."""
    for book in (read_price_book(PARTIAL, "firm.yaml", "USD"), read_price_book(rows_with(), "firm.csv", "USD")):
        assert read_price_book(price_table(book), "other.csv", "USD") == book


def test_a_scenario_names_its_book_and_the_call_may_give_another(yard, tmp_path):
    """Beside it or below it; what the call gives wins; without either the demonstration prices are taken."""
    assert load_scenario(yard).book.name == "Alder and Sons"
    other = tmp_path / "other.yaml"
    other.write_text(PARTIAL.replace("Alder and Sons", "Birch"))
    assert load_scenario(yard, other).book.name == "Birch"
    (tmp_path / "below").mkdir()
    (tmp_path / "firm.yaml").rename(tmp_path / "below" / "firm.yaml")
    yard.write_text(NAMED.replace("firm.yaml", "below/firm.yaml"))
    assert load_scenario(yard).book.name == "Alder and Sons"
    assert read_scenario(SMALL, "yard.yaml").book == book_for("USD")


def test_everything_wrong_is_told_at_once_in_its_place():
    """One report for a book with a fault of each kind, each with line and column."""
    text = """\
name: Alder and Sons
date: October
currency: EUR
extra: 3
prices:
  - {item: unit paving, unit: sq m, price: 40, low: 34, high: 46}
  - {item: lawn, unit: sq ft, price: -2.5, low: 2, high: 3}
  - {item: lawnn, unit: sq ft, price: 5, low: 2, high: 9}
  - {item: steps, unit: each, price: 5, low: 7, high: 9}
  - {item: steps, unit: each, low: 7, high: 9}
"""
    told = of_book(text)
    for start, words in (
        ("firm.yaml:2:7: ", "the month of the prices"),
        ("firm.yaml:3:11: ", "prices in the scenario's currency, USD, found 'EUR'"),
        ("firm.yaml:4:1: ", "found 'extra'"),
        ("firm.yaml:6:3: ", "a price for every item, found none for plain paving; path paving"),
        ("firm.yaml:6:31: ", "the unit sq ft for unit paving, found 'sq m'"),
        ("firm.yaml:7:38: ", "`price` as an amount of money of at least 0, found -2.5"),
        ("firm.yaml:8:12: ", "an item that the program counts, found 'lawnn'; did you mean lawn?"),
        ("firm.yaml:9:38: ", "low up to price, price up to high, found low 7, price 5, high 9"),
        ("firm.yaml:10:5: ", "`price` as an amount of money of at least 0, found nothing"),
        ("firm.yaml:10:12: ", "each item once, found 'steps' a second time"),
    ):
        assert [line for line in told if line.startswith(start) and words in line], (start, told)
    assert len(told) == 10


@pytest.mark.parametrize(
    ("changes", "place", "words"),
    [
        ({"lawn": {"price": ""}}, ":4", "`price` as an amount"),
        ({"lawn": {"low": "1e3"}}, ":5", "`low` as an amount"),
        ({"lawn": {"high": "3.999"}}, ":6", "`high` as an amount"),
        ({"lawn": {"high": "1"}}, ":4", "price up to high"),
        ({"lawn": {"unit": "m2"}}, ":3", "the unit sq ft for lawn, found 'm2'"),
        ({"lawn": {"item": "lawns"}}, ":1", "found 'lawns'; did you mean lawn?"),
        ({"lawn": {"currency": "AUD"}}, ":9", "one currency for the whole file, found 'AUD' after 'USD'"),
        ({"lawn": {"item": "steps"}}, ":1", "each item once"),
    ],
)  # fmt: skip
def test_what_is_wrong_in_a_table_has_its_line_and_cell(changes, place, words):
    """Line, and number of the cell in it."""
    line = next(i for i, row in enumerate(WHOLE.splitlines(), 1) if row.startswith("lawn,"))
    told = of_book(rows_with(**changes), "firm.csv")
    assert any(f"firm.csv:{line}{place}: " in one and words in one for one in told), told


@pytest.mark.parametrize("wrong", ["1.2", "12", "0.12345", "1.0001", ".5"])
def test_a_share_lies_between_none_and_all(wrong):
    """What a share of other lines comes to: up to four decimals, at most 1, one report at its cell."""
    told = of_book(rows_with(poor_access={"high": wrong}), "firm.csv")
    assert len([one for one in told if "`high` as a share, such as 0.12" in one]) == 1
    book = read_price_book(rows_with(poor_access={"price": "0.2125", "high": "1"}), "firm.csv", "USD")
    assert [str(book.of("poor access").price), float(book.of("poor access").high)] == ["0.2125", 1]
    assert read_price_book(price_table(book), "other.csv", "USD") == book
    assert (
        book.digest != read_price_book(rows_with(poor_access={"price": "0.21", "high": "1"}), "firm.csv", "USD").digest
    )


@pytest.mark.parametrize(
    ("text", "name", "words"),
    [
        ("", "firm.csv", "a row for each item"),
        ('item,unit\n"lawn', "firm.csv", "a table with commas"),
        ("item,unit,colour\nlawn,sq ft,green\n", "firm.csv", "found 'colour'"),
        ("item\nlawn,sq ft\n", "firm.csv", "1 cells, found 2"),
        ("- lawn\n", "firm.yaml", "a price book with keys"),
        ("name: &a x\n", "firm.yaml", "anchor"),
        (PARTIAL.replace("demonstration prices", "guesses"), "firm.yaml", "expected demonstration prices"),
        (PARTIAL.replace("  - {item: lawn", "  - lawn\n  - {item: lawn"), "firm.yaml", "keys with values"),
        (PARTIAL.replace("prices:\n", "prices: 3\n").split("  -")[0], "firm.yaml", "a list of prices"),
        (PARTIAL.replace("Alder and Sons", "x" * 201), "firm.yaml", "at most 200 characters"),
        (PARTIAL + "#" * 1_000_000, "firm.yaml", "at most 1 MB"),
    ],
)  # fmt: skip
def test_what_is_no_price_book_is_refused(text, name, words):
    """Faults of the file as a whole, in either form."""
    assert any(words in one for one in of_book(text, name))


def test_based_on_needs_demonstration_prices_in_the_currency():
    """There are none in euros to take the rest from."""
    told = of_book(PARTIAL.replace("USD", "EUR"), currency="EUR")
    assert [one for one in told if "a currency with demonstration prices" in one]


@pytest.mark.parametrize(
    "named", ["../firm.yaml", "/etc/passwd", "below/../../firm.yaml", "below/../firm.yaml", "..\\firm.yaml"]
)
def test_a_book_elsewhere_is_refused(yard, named):
    """A scenario names no file outside its own folder; the report stands at its key."""
    (yard.parent.parent / "firm.yaml").write_text(PARTIAL)
    yard.write_text(NAMED.replace("firm.yaml", f"'{named}'"))
    (told,) = problems(lambda: load_scenario(yard))
    assert "yard.yaml:1:9: expected a price book in the scenario's folder" in told


def test_a_link_that_leads_elsewhere_is_refused(yard, tmp_path_factory):
    """Also where the name looks harmless."""
    away = tmp_path_factory.mktemp("away") / "firm.yaml"
    away.write_text(PARTIAL)
    yard.with_name("firm.yaml").unlink()
    yard.with_name("firm.yaml").symlink_to(away)
    (told,) = problems(lambda: load_scenario(yard))
    assert "which leads elsewhere" in told


def test_both_files_are_told_of_at_once(yard):
    """What is wrong with the scenario and what is wrong with its book, in one report."""
    yard.write_text(NAMED.replace("units: ft", "units: yd"))
    yard.with_name("firm.yaml").write_text(PARTIAL.replace("price: 40", "price: none"))
    told = problems(lambda: load_scenario(yard))
    assert ["yard.yaml:4:8" in told[0], "firm.yaml:7:" in told[1], len(told)] == [True, True, 2]


def test_a_text_alone_has_no_book_beside_it():
    """It is read without other files, and says so."""
    (told,) = problems(lambda: read_scenario(NAMED, "yard.yaml"))
    assert "yard.yaml:1:9: expected the price book firm.yaml" in told
    assert read_scenario(NAMED, "yard.yaml", read_price_book(PARTIAL, "f.yaml", "USD")).book.name == "Alder and Sons"


def test_files_that_are_not_there_or_of_another_kind(tmp_path):
    """A missing file, a folder, and an ending that says nothing."""
    for name, words in (("none.csv", "nothing of that name"), ("firm.txt", "that ends in .yaml")):
        (told,) = problems(lambda name=name: load_price_book(tmp_path / name, "USD"))
        assert words in told
    (tmp_path / "folder.csv").mkdir()
    (told,) = problems(lambda: load_price_book(tmp_path / "folder.csv", "USD"))
    assert "a folder" in told
