"""`outdoor-rooms why`: the contract of its answer, its exit statuses, and one clear report for a wrong call."""

import json

import pytest

from optimizer.cli import main
from optimizer.scenario import read_scenario
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import TEXT


@pytest.fixture
def yard(tmp_path):
    """The tiny yard as a file."""
    path = tmp_path / "tiny.yaml"
    path.write_text(TEXT, encoding="utf-8")
    return path


def ask(yard, *words, seconds=12):
    """Exit status of a question about the nook; it takes so long only where nothing is found out."""
    return main(["why", str(yard), "--room", "nook", "--seconds", str(seconds), *words])


def test_answered(yard, tmp_path, capsys):
    """Printed and written: the keys of the contract, and a patch that the text bears."""
    out = tmp_path / "why.json"
    assert ask(yard, "--at", "16,12", "--json", str(out)) == 0
    said = json.loads(out.read_text())
    assert said["question"] == "Why is the nook not at 16, 12 ft?"
    assert said["answer"].startswith("It cannot be: no layout of this yard keeps all of this together with it: ")
    assert [(rule["id"], rule["rooms"]) for rule in said["rules"]][1] == ("apart", ["nook", "table"])
    for way in said["ways_out"]:
        patch = [(step["op"], step["path"], step["value"]) for step in way["patch"]]
        assert patched(read_scenario(TEXT, "tiny"), patch).brief.holds
    printed = capsys.readouterr().out
    assert said["answer"] in printed
    assert "  Nook at least 12 ft from table. (nook, table)" in printed
    assert sorted(path.name for path in tmp_path.iterdir()) == ["tiny.yaml", "why.json"]


def test_undecided(tmp_path):
    """On foot round the nook the table is never within 8 ft: the solver cannot rule it out, and no plan is found."""
    path = tmp_path / "walked.yaml"
    path.write_text(TEXT.replace(", by: straight", ""), encoding="utf-8")
    assert ask(path, "--at", "4,20", seconds=2) == 4


def test_in_a_concept(yard, tmp_path, capsys):
    """The concept as it is comes first, with the words of what is broken there; then a place that works."""
    assert main(["options", str(yard), "--out", str(tmp_path), "--seconds", "1", "--processes", "0"]) == 0
    (concept, *_) = json.loads((tmp_path / "options.json").read_text())["options"]
    nook = next(room for room in concept["rooms"] if room["name"] == "nook")
    capsys.readouterr()
    result = ("--from", str(tmp_path / "options.json"), "--option", concept["id"])
    assert ask(yard, *result, "--at", f"{nook['x_ft']},{nook['y_ft']}") == 0
    assert "In concept 1, with all other rooms where they are, it can stand there" in capsys.readouterr().out
    assert ask(yard, *result, "--at", "16,12") == 0
    assert "In concept 1, with all other rooms where they are, it cannot stand there: nook " in capsys.readouterr().out
    assert ask(yard, *result, "--choice", nook["choice"]) == 0
    assert "Concept 1 has it so already." in capsys.readouterr().out
    assert ask(yard, *result, "--left-out") == 2
    assert "--option: expected a concept without the nook, found concept-01, which has it" in capsys.readouterr().err
    assert ask(yard, "--from", str(tmp_path / "options.json"), "--option", "concept-99") == 2
    assert "'concept-99'; it has concept-01" in capsys.readouterr().err


@pytest.mark.parametrize(("words", "said"), [
    (("--room", "nok"), "--room: expected the name of a room, found 'nok'; there is table, nook"),
    (("--choice", "huge"), "--choice: expected a choice of the nook, found 'huge'; it has small, large"),
    (("--at", "90,3"), "--at: expected a corner inside the boundary, found 90, 3 ft, outside"),
    (("--at", "9"), "--at: expected x,y, found '9'; write two lengths"),
    (("--at", "nan,3"), "--at: expected"),
    (("--sun",), "--room: expected a room with a wish for sun or shade, found 'nook'; there is none"),
    (("--sun", "--left-out"), "expected one of --at, --choice, --left-out, --sun, found --left-out and --sun"),
    (("--option", "a"), "expected --from RESULT beside --option, found --option alone"),
    (("--from", "nowhere.json"), "expected a result file"),
])  # fmt: skip
def test_wrong_calls(yard, words, said, tmp_path, capsys):
    """One report that lists the names; nothing is written."""
    out = tmp_path / "why.json"
    assert ask(yard, *words, "--json", str(out)) == 2
    error = capsys.readouterr().err
    assert said in error
    assert "Traceback" not in error
    assert not out.exists()


def test_held_otherwise(tmp_path, capsys):
    """What is asked goes against a hold: that is the answer, and to let go of it was tried."""
    path, out = tmp_path / "held.yaml", tmp_path / "why.json"
    path.write_text(TEXT.replace("budget:", "  holds: [{room: nook, at: [24, 16]}]\nbudget:"), encoding="utf-8")
    assert ask(path, "--at", "20,16", "--json", str(out)) == 0
    assert "It is held otherwise: nook at 24, 16 ft." in capsys.readouterr().out
    (way,) = json.loads(out.read_text())["ways_out"]
    assert [step["path"] for step in way["patch"]] == ["/brief/holds/0", "/brief/holds/-"]


def test_events_for_a_program(yard, tmp_path, capsys):
    """With JSON progress standard output has events alone, and what is wrong is one of them; prices are read too."""
    firm = tmp_path / "firm.csv"
    firm.write_text("item,unit\nlawn,sq ft\n", encoding="utf-8")
    for wrong, words in (("--choice=huge", "'huge'"), (f"--prices={firm}", "firm.csv")):
        assert ask(yard, "--progress", "json", wrong) == 2
        events = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
        assert events[0]["event"] == "started"
        assert any(event["event"] == "problem" and words in event["text"] for event in events)
