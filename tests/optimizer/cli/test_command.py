"""Every call ends in its exit status and, where something is wrong, in one clear message."""

import json
import sys
from pathlib import Path

import pytest

from optimizer import __version__
from optimizer.cli import main
from optimizer.cli.console import printable
from optimizer.cli.entry import DETAILS_VARIABLE
from optimizer.cli.parameters import SHORTEST_S
from optimizer.cli.sheet import WRITERS
from optimizer.results.read import read_result
from optimizer.results.write import to_text
from tests.sample_run import YARD, sample_document

PROJECT = Path(__file__).parents[3]


@pytest.fixture
def result_path(tmp_path):
    """Stored result of two concepts."""
    path = tmp_path / "options.json"
    path.write_text(to_text(sample_document()), encoding="utf-8")
    return path


def call(capsys, *arguments) -> tuple[int, str, str]:
    """Exit status, standard output and standard error of a call."""
    status = main([str(argument) for argument in arguments])
    out, err = capsys.readouterr()
    return status, out, err


def test_help_names_every_command(capsys):
    """Help ends well, names the commands, and carries the caution."""
    status, out, _ = call(capsys, "--help")
    assert status == 0
    assert all(name in out for name in ("check", "options", "recheck", "sheet", "schema", "page"))
    assert "licensed practice" in " ".join(out.split())


def test_version(capsys):
    """The version is printed alone."""
    assert call(capsys, "--version") == (0, f"outdoor-rooms {__version__}\n", "")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("dance",), "dance"),
        (("options", "yard.yaml"), "--out"),
        (("options", "yard.yaml", "--out", "x", "--seconds", "nan"), "expected 0.1 to 86400 seconds, found nan"),
        (("options", "yard.yaml", "--out", "x", "--seconds", "0.09"), "expected 0.1 to 86400 seconds, found 0.09"),
        (("options", "yard.yaml", "--out", "x", "--seconds", "inf"), "seconds, found inf"),
        (("options", "yard.yaml", "--out", "x", "--count", "0"), "--count"),
        (("options", "yard.yaml", "--out", "x", "--seed", "seven"), "--seed"),
        (("options", "yard.yaml", "--out", "x", "--progress", "dots"), "expected bar or json, found 'dots'"),
        (("page", "--port", "70000"), "--port"),
        (("check",), "SCENARIO"),
    ],
)
def test_a_wrong_call_is_told(capsys, arguments, words):
    """A wrong call exits with 2 and says what is wrong with it, on standard error, without a traceback."""
    status, out, err = call(capsys, *arguments)
    assert status == 2
    assert out == ""
    assert words in err
    assert "Traceback" not in err


def test_check_prints_facts_and_notes(capsys, engine):
    """The facts come in two columns, then what a reader should know."""
    engine("two")
    status, out, _ = call(capsys, "check", YARD)
    assert status == 0
    assert out.startswith("yard          Fernhollow Court\nrooms wished  5\n")
    assert "note: " in out


@pytest.mark.parametrize("name", ["missing.yaml", "."])
def test_a_scenario_that_cannot_be_read_is_told(capsys, engine, tmp_path, name):
    """A missing file or a folder exits with 2 and one line."""
    status, out, err = call(capsys, "check", tmp_path / name)
    assert (status, out) == (2, "")
    assert err.count("\n") == 1
    assert "expected a scenario file" in err


def test_every_problem_of_a_scenario_is_told(capsys, tmp_path):
    """Two wrong lengths give two lines, each with its place."""
    text = YARD.read_text(encoding="utf-8")
    path = tmp_path / "yard.yaml"
    path.write_text(text.replace("height: 21", "height: tall").replace("radius: 14", "radius: wide"), encoding="utf-8")
    status, _, err = call(capsys, "check", path)
    assert status == 2
    assert len([line for line in err.splitlines() if line.startswith(f"{path}:")]) == 2


def test_recheck_says_that_a_result_holds(capsys, engine, result_path):
    """A result without differences exits with 0."""
    engine("two")
    assert call(capsys, "recheck", result_path)[:2] == (0, "The result holds what it says.\n")


def test_recheck_says_what_differs(capsys, engine, result_path):
    """A result with differences exits with 5 and prints each."""
    engine("differs")
    assert call(capsys, "recheck", result_path)[:2] == (5, "concept a1: breaks a rule\n")


@pytest.mark.parametrize(
    ("fake", "ends", "said"),
    [
        ("two", 0, "The result holds what it says, and so do its proofs and its ways out."),
        ("undecided", 4, "undecided in 7 s\nNothing was contradicted; more time may decide what is left."),
        ("false_proof", 5, "undecided too\nnot the best"),
        ("differs", 5, "concept a1: breaks a rule"),
    ],
)
def test_recheck_may_solve_again(capsys, engine, result_path, fake, ends, said):
    """What is contradicted counts more than what is undecided; what differs anyway is not solved."""
    engine(fake)
    assert call(capsys, "recheck", result_path, "--solve", "--seconds", "7")[:2] == (ends, f"{said}\n")


def test_a_sheet_as_drawing(capsys, engine, result_path, tmp_path):
    """The ending .svg writes the plan of the concept asked for: the designer's, or the owner's where that is asked."""
    out = tmp_path / "a2.svg"
    for options, reader in (((), "designer"), (("--for", "owner"), "owner"), (("--for", "designer"), "designer")):
        assert call(capsys, "sheet", result_path, "--option", "a2", "--out", out, *options)[0] == 0
        assert out.read_text(encoding="utf-8") == f"<svg><title>Fernhollow Court a2 for the {reader}</title></svg>"


def test_a_reader_that_is_not_known_is_told(capsys, engine, result_path, tmp_path):
    """Exit 2, with who there is."""
    status, _, err = call(
        capsys, "sheet", result_path, "--option", "a2", "--out", tmp_path / "a.svg", "--for", "builder"
    )
    assert status == 2
    assert "--for: expected owner or designer, found 'builder'" in err


def test_a_sheet_as_data_is_a_result_of_one_concept(capsys, engine, result_path, tmp_path):
    """The ending .json writes a result that stands alone, with that concept only."""
    out = tmp_path / "a2.json"
    assert call(capsys, "sheet", result_path, "--option", "a2", "--out", out)[0] == 0
    assert [option.id for option in read_result(out).option_set.options] == ["a2"]


@pytest.mark.parametrize(
    ("option", "name", "words"),
    [
        ("a9", "plan.svg", ("--option: expected a concept of options.json, found 'a9'; it has a1, a2",)),
        ("a1", "plan.doc", ("--out: expected a file that ends in", *WRITERS)),
        ("a1", "plan", ("--out: expected a file that ends in", *WRITERS)),
        ("a1", "missing/plan.json", ("missing/plan.json: expected a place to write results to",)),
    ],
)
def test_a_sheet_that_cannot_be_is_told(capsys, engine, result_path, tmp_path, option, name, words):
    """An unknown concept or ending, or a place that is not there, exits with 2, says what there is, writes nothing."""
    status, _, err = call(capsys, "sheet", result_path, "--option", option, "--out", tmp_path / name)
    assert status == 2
    assert all(word in err for word in words)
    assert [path.name for path in tmp_path.iterdir()] == ["options.json"]


def test_the_schema_is_printed_or_written(capsys, tmp_path):
    """The schema is a JSON Schema of an object, the same on screen and in the file."""
    status, out, _ = call(capsys, "schema")
    assert status == 0
    assert json.loads(out)["type"] == "object"
    assert call(capsys, "schema", "--out", tmp_path / "schema.json")[0] == 0
    assert json.loads((tmp_path / "schema.json").read_text(encoding="utf-8")) == json.loads(out)


def broken(*_, **__):
    """Fail as only a fault of the program does."""
    raise RuntimeError("a wheel came off\nand rolled away")


@pytest.fixture
def fault(monkeypatch, engine):
    """Make `check` break."""
    engine("two")
    monkeypatch.setattr(sys.modules["optimizer.pipeline"], "site_facts", broken)


def test_a_fault_is_told_without_a_traceback(capsys, fault, monkeypatch):
    """A fault exits with 1, in a few lines that say how to report it."""
    monkeypatch.delenv(DETAILS_VARIABLE, raising=False)
    status, _, err = call(capsys, "check", YARD)
    assert status == 1
    assert "A fault of the program, not of your files: RuntimeError: a wheel came off" in err
    assert "report it" in err
    assert "Traceback" not in err
    assert len(err.splitlines()) == 2


def test_details_of_a_fault_go_to_a_file(capsys, fault, monkeypatch, tmp_path):
    """Where a file is named for details, the traceback is in it, and the message says so."""
    details = tmp_path / "details.txt"
    monkeypatch.setenv(DETAILS_VARIABLE, str(details))
    status, _, err = call(capsys, "check", YARD)
    assert status == 1
    assert str(details) in err
    assert "Traceback" in details.read_text(encoding="utf-8")


def test_details_that_cannot_be_kept_are_no_second_fault(capsys, fault, monkeypatch, tmp_path):
    """Where the file for details cannot be written the message is as without it."""
    monkeypatch.setenv(DETAILS_VARIABLE, str(tmp_path))
    status, _, err = call(capsys, "check", YARD)
    assert status == 1
    assert "report it" in err


def test_nothing_moves_the_cursor():
    """Control characters in a name are shown as such and do not reach the terminal."""
    assert (
        printable("a\x1b[31mb\x07\u202e½\n")
        == "a\N{REPLACEMENT CHARACTER}[31mb" + "\N{REPLACEMENT CHARACTER}" * 2 + "½\n"
    )


def test_the_shortest_search_is_allowed(capsys, engine, tmp_path):
    """The limit itself is a search time."""
    engine("two")
    assert call(capsys, "options", YARD, "--out", tmp_path, "--seconds", SHORTEST_S)[0] == 0
