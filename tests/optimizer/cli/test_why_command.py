"""`outdoor-rooms why`: the contract of its answer, its exit statuses, and one clear report for a wrong call."""

import json

import pytest

from optimizer.cli import main
from optimizer.scenario import read_scenario
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import TEXT

OWN_PRICES = """\
name: Alder and Sons
date: "2026-10"
currency: USD
based_on: demonstration prices
prices:
  - {item: light, unit: each, price: 700, low: 600, high: 800}
"""


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
    assert "What would help; each was tried:" in printed
    assert "  Nook at least 12 ft from table. (nook, table)" in printed
    assert sorted(path.name for path in tmp_path.iterdir()) == ["tiny.yaml", "why.json"]


def test_undecided(tmp_path, capsys):
    """On foot round the nook the table is never within 8 ft: the solver cannot rule it out, and no plan is found."""
    path = tmp_path / "walked.yaml"
    path.write_text(TEXT.replace(", by: straight", ""), encoding="utf-8")
    assert ask(path, "--at", "4,20", seconds=2) == 4
    printed = capsys.readouterr()
    assert "What is in the way was not proven in this time: try --from RESULT or more --seconds." in printed.out
    assert printed.err.count("trying ways out") == 1


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
    assert ask(yard, *result, "--choice", nook["choice"]) == 2
    assert f"expected a choice of the nook larger than {nook['choice']}, found" in capsys.readouterr().err
    assert ask(yard, *result, "--left-out") == 2
    assert "--option: expected a concept without the nook, found concept-01, which has it" in capsys.readouterr().err
    assert ask(yard, "--from", str(tmp_path / "options.json"), "--option", "concept-99") == 2
    assert "'concept-99'; it has concept-01" in capsys.readouterr().err


def test_prices_of_ones_own(yard, tmp_path, capsys):
    """A book that the scenario names, that the call names, or that the result of the call was made with."""
    (tmp_path / "own.yaml").write_text(OWN_PRICES)
    named = tmp_path / "named.yaml"
    named.write_text(f"prices: own.yaml\n{TEXT}", encoding="utf-8")
    assert main(["options", str(named), "--out", str(tmp_path), "--seconds", "1", "--processes", "0"]) == 0
    concepts = json.loads((tmp_path / "options.json").read_text())["options"]
    costs = [f"{float(next(iter(one['cost']['phases'].values()))):,.0f} USD" for one in concepts]
    capsys.readouterr()
    result = ("--from", str(tmp_path / "options.json"))
    for asked, words in ((named, result), (yard, result), (yard, (*result, "--prices", str(tmp_path / "own.yaml")))):
        assert ask(asked, "--left-out", *words) == 0
        printed = capsys.readouterr().out
        assert "To have it:" in printed
        assert "What would help" not in printed
        assert any(f"it fits: concept {i}" in printed.lower() and cost in printed for i, cost in enumerate(costs, 1))
    assert ask(yard, "--at", "16,12", "--json", str(tmp_path / "a.json")) == 0
    assert ask(named, "--at", "16,12", "--json", str(tmp_path / "b.json")) == 0
    plain, own = (json.loads((tmp_path / name).read_text())["ways_out"] for name in ("a.json", "b.json"))
    assert plain
    assert own
    assert plain[0]["text"] != own[0]["text"]


@pytest.mark.parametrize(("words", "said"), [
    (("--room", "nok"), "--room: expected the name of a room, found 'nok'; there is table, nook"),
    (("--choice", "huge"), "--choice: expected a choice of the nook, found 'huge'; it has small, large"),
    (("--choice", "small"), "expected a choice of the nook larger than small, found 'small'; larger is large\n"),
    (("--room", "table", "--choice", "two"), "larger than two, found 'two'; the table has no larger size\n"),
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


@pytest.mark.parametrize("place", ["yard.txt/inner/why.json", "folder"])
def test_a_file_that_cannot_be_written(yard, place, tmp_path, capsys):
    """Before the question is asked, or once it is answered: the report names the option that leads there."""
    (tmp_path / "yard.txt").touch()
    (tmp_path / "folder").mkdir()
    assert ask(yard, "--at", "16,12", "--json", str(tmp_path / place)) == 2
    assert "choose another place with --json, or free room and rights there" in capsys.readouterr().err


def test_held_otherwise(tmp_path, capsys):
    """What is asked goes against a hold: that is the answer, and to let go of it was tried."""
    path, out = tmp_path / "held.yaml", tmp_path / "why.json"
    path.write_text(TEXT.replace("budget:", "  holds: [{room: nook, at: [24, 16]}]\nbudget:"), encoding="utf-8")
    assert ask(path, "--at", "20,16", "--json", str(out)) == 0
    assert "It is held otherwise: nook at 24, 16 ft." in capsys.readouterr().out
    (way,) = json.loads(out.read_text())["ways_out"]
    assert [step["path"] for step in way["patch"]] == ["/brief/holds/0", "/brief/holds"]
    assert way["text"].startswith(
        "let go of what is held: nook at 24, 16 ft; hold the nook at 20, 16 ft; a plan found "
    )
    said = json.loads(out.read_text())
    assert "What follows is without that hold. It fits: a plan with it was found and checked, for " in said["answer"]
    assert [rule["id"] for rule in said["rules"]] == ["held"]


def test_held_otherwise_and_impossible_anyway(tmp_path):
    """Without the hold it stands in the house: that is told too, with a place that works."""
    path, out = tmp_path / "held.yaml", tmp_path / "why.json"
    area = "[[20, 12], [36, 12], [36, 28], [20, 28]]"
    path.write_text(TEXT.replace("budget:", f"  holds: [{{room: nook, within: {area}}}]\nbudget:"), encoding="utf-8")
    assert ask(path, "--at", "4,0", "--json", str(out)) == 0
    said = json.loads(out.read_text())
    assert said["answer"].startswith(
        "It is held otherwise: nook within the area with corners (20, 12), (36, 12), (36, 28) and (20, 28) ft. "
        "What follows is without that hold. It cannot stand there, wherever the other rooms are: nook "
    )
    assert "off_buildings" in [rule["id"] for rule in said["rules"]]
    (way,) = said["ways_out"]
    patch = [(step["op"], step["path"], step["value"]) for step in way["patch"]]
    assert patched(read_scenario(path.read_text(), "held"), patch).brief.holds[0].at_ft is not None


def test_held_otherwise_and_undecided(tmp_path):
    """Where nothing was found in the time without the hold either, that is not told as answered."""
    path, out = tmp_path / "held.yaml", tmp_path / "why.json"
    held = TEXT.replace(", by: straight", "").replace("budget:", "  holds: [{room: nook, at: [24, 16]}]\nbudget:")
    path.write_text(held, encoding="utf-8")
    assert ask(path, "--at", "4,20", "--json", str(out), seconds=2) == 4
    answer = json.loads(out.read_text())["answer"]
    assert answer.startswith("It is held otherwise: nook at 24, 16 ft. What follows is without that hold. No plan with")


def test_events_for_a_program(yard, tmp_path, capsys):
    """With JSON progress standard output has events alone, and what is wrong is one of them; prices are read too."""
    firm = tmp_path / "firm.csv"
    firm.write_text("item,unit\nlawn,sq ft\n", encoding="utf-8")
    for wrong, words in (("--choice=huge", "'huge'"), (f"--prices={firm}", "firm.csv")):
        assert ask(yard, "--progress", "json", wrong) == 2
        events = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
        assert events[0]["event"] == "started"
        assert any(event["event"] == "problem" and words in event["text"] for event in events)
