"""The commands about prices, and two concepts side by side."""

import csv
import io

import pytest

from optimizer.catalogue import book_for
from optimizer.cli import batch_command, main
from optimizer.cli.yard_run import YardDone
from optimizer.results import to_text
from optimizer.results.estimate_table import COLUMNS
from optimizer.scenario.price_books import load_price_book
from tests.sample_run import YARD, sample_document
from tests.small_yard import SMALL, changed

PARTIAL = """\
name: Alder and Sons
date: "2026-10"
currency: USD
based_on: demonstration prices
prices:
  - {item: light, unit: each, price: 9000, low: 8000, high: 10000}
"""


def call(capsys, *arguments):
    """Exit status, standard output and standard error of the command."""
    status = main([str(argument) for argument in arguments])
    return status, *capsys.readouterr()


@pytest.fixture
def result(tmp_path):
    """A stored result of two concepts."""
    path = tmp_path / "options.json"
    path.write_text(to_text(sample_document()), encoding="utf-8")
    return path


def test_demonstration_prices_as_a_file_to_fill_in(capsys, tmp_path):
    """What is written is read back as a whole book of one's own."""
    out = tmp_path / "firm.csv"
    assert call(capsys, "prices", "--out", out, "--currency", "AUD")[0] == 0
    out.write_text(out.read_text().replace(book_for("AUD").name, "Birch"))
    own = load_price_book(out, "AUD")
    assert (own.name, own.prices) == ("Birch", book_for("AUD").prices)
    status, _, err = call(capsys, "prices", "--out", out, "--currency", "EUR")
    assert (status, "USD or AUD, found EUR" in err) == (2, True)


def test_check_counts_by_the_prices_of_the_call(capsys, tmp_path):
    """Dear lights make all wishes dearer; a book with faults is one report and exit 2."""
    book = tmp_path / "firm.yaml"
    book.write_text(PARTIAL)
    status, out, _ = call(capsys, "check", YARD, "--prices", book)
    plain = call(capsys, "check", YARD)[1]
    assert status == 0
    assert "Alder and Sons" in out
    assert "invented for demonstrations" in plain
    least = [next(line for line in text.splitlines() if line.startswith("all wishes")) for text in (plain, out)]
    assert least[0] != least[1]
    book.write_text(changed("9000", "-1", changed("light", "lamp", PARTIAL)))
    status, _, err = call(capsys, "check", YARD, "--prices", book)
    assert (status, len(err.splitlines())) == (2, 2)


def test_a_batch_takes_price_books_along(capsys, tmp_path, monkeypatch):
    """The one that a scenario names, which is no scenario itself, and the one of the call; another one is run again."""
    folder, ran = tmp_path / "yards", []
    folder.mkdir()
    (folder / "a.yaml").write_text(f"prices: own.yaml\n{SMALL}")
    (folder / "b.yaml").write_text(SMALL)
    (folder / "own.yaml").write_text(PARTIAL)
    given = tmp_path / "firm.yaml"
    given.write_text(PARTIAL)

    def made_up(name, _, arguments, beside):
        ran.append((name, sorted(beside), "--prices" in arguments))
        return YardDone(4, 1.0, "", {})

    monkeypatch.setattr(batch_command, "run_yard", made_up)
    call(capsys, "batch", folder, "--out", tmp_path / "out")
    assert sorted(ran) == [("a.yaml", ["own.yaml"], False), ("b.yaml", [], False)]
    ran.clear()
    call(capsys, "batch", folder, "--out", tmp_path / "out")
    assert ran == []
    (folder / "own.yaml").write_text(changed("9000", "9500", PARTIAL))
    call(capsys, "batch", folder, "--out", tmp_path / "out")
    assert [name for name, *_ in ran] == ["a.yaml"]
    ran.clear()
    call(capsys, "batch", folder, "--out", tmp_path / "out", "--prices", given)
    assert sorted(ran) == [
        ("a.yaml", ["own.yaml", "prices given with the call.yaml"], True),
        ("b.yaml", ["prices given with the call.yaml"], True),
    ]


def test_a_batch_without_its_price_book_is_told(capsys, tmp_path):
    """Before anything is run."""
    (tmp_path / "a.yaml").write_text(SMALL)
    status, _, err = call(capsys, "batch", tmp_path, "--out", tmp_path / "out", "--prices", tmp_path / "none.csv")
    assert (status, "expected a price book, found nothing of that name" in err) == (2, True)


def test_a_sheet_as_a_table(capsys, result, tmp_path):
    """The ending .csv writes quantities and estimate of the concept."""
    out = tmp_path / "a1.csv"
    assert call(capsys, "sheet", result, "--option", "a1", "--out", out)[0] == 0
    rows = list(csv.DictReader(io.StringIO(out.read_text(encoding="utf-8"))))
    assert list(rows[0]) == list(COLUMNS)
    assert rows[0]["amount"] == "5040.00"


def test_two_concepts_side_by_side(capsys, tmp_path, result):
    """Rooms, figures, lines and their sum, the prices, and a table where it is asked for."""
    document = sample_document()
    other = document["options"][1]
    other["rooms"][0]["x_ft"] += 10
    other["cost"]["lines"][0].update(quantity=200.0, amount="6000.00")
    other["cost"].update(total="24828.97", phases={"1": "8728.97", "2": "16100.00"})
    result.write_text(to_text(document), encoding="utf-8")
    out = tmp_path / "lines.csv"
    status, said, _ = call(capsys, "compare", result, "--option", "a1", "--option", "a2", "--out", out)
    assert status == 0
    for words in (
        "Concept 2 (a2) against Concept 1 (a1)",
        "gathering area moved 10.0 ft to the south-east",
        "200 sq ft instead of 168 sq ft",
        "In all +960.00 USD.",
        "invented for demonstrations",
    ):
        assert words in said
    (row,) = csv.DictReader(io.StringIO(out.read_text(encoding="utf-8")))
    assert (row["item"], row["before"], row["after"], row["why"]) == ("paving", "5040.00", "6000.00", "quantity")
    status, said, _ = call(capsys, "compare", result, "--option", "a1", "--with", result, "--option", "a1")
    assert "All rooms stand as they stood." in said
    assert "In all +0.00 USD." in said


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--option", "a1"), "two concepts"),
        (("--option", "a1", "--option", "a2", "--option", "a1"), "two concepts"),
        (("--option", "a1", "--option", "a9"), "expected a concept of"),
        (("--option", "a1", "--option", "a2", "--with", "none.json"), "none.json"),
    ],
)
def test_a_wrong_comparison(capsys, result, arguments, words):
    """Exit 2, with what is known."""
    status, _, err = call(capsys, "compare", result, *arguments)
    assert (status, words in err) == (2, True)


def test_two_yards_are_not_compared(capsys, tmp_path, result):
    """Only results of one yard, in one currency."""
    document = sample_document()
    for old, new, words in (
        ("corners: [[0, 0], [100, 0]", "corners: [[0, 0], [101, 0]", "two results of the same yard"),
        ("currency: USD", "currency: AUD", "two results in one currency"),
    ):
        text = changed(old, new, document["scenario"]["text"])
        another = {**document, "scenario": {**document["scenario"], "text": text}, "prices": None}
        other = tmp_path / "other.json"
        other.write_text(to_text(another), encoding="utf-8")
        status, _, err = call(capsys, "compare", result, "--option", "a1", "--with", other, "--option", "a2")
        assert (status, words in err) == (2, True)


def test_a_revision_note_with_what_was_decided(capsys, result, tmp_path):
    """Decisions are printed with the differences, and stand in the note that an ending of .txt asks for."""
    table, note = tmp_path / "decisions.csv", tmp_path / "note.txt"
    table.write_text("when,version,what,reason\n2026-05-02 10:15,2,Held: quiet nook,Shade of the oak\n")
    both = ("--option", "a1", "--option", "a2")
    status, out, _ = call(capsys, "compare", result, *both, "--decisions", table, "--out", note)
    line = "2026-05-02 10:15, version 2: Held: quiet nook. Why: Shade of the oak."
    assert status == 0
    assert f"Decided {line}" in out
    assert line in note.read_text(encoding="utf-8")
    table.write_text("a,b\n")
    status, _, err = call(capsys, "compare", result, *both, "--decisions", table)
    assert (status, "expected columns when, version, what, reason" in err) == (2, True)
