"""The nearest layout to a sketch on the command line: what is written, said and returned."""

import json

import pytest

from optimizer.cli import main
from tests.optimizer.concepts.whys.tiny_yard import TEXT

SKETCHES = """sketches:
  - name: mine
    rooms: [{room: table, choice: two, at: [4, 10.5], width: 12, depth: 8, front: +y}]
"""


@pytest.fixture
def yard(tmp_path):
    """The tiny yard with a table that is drawn before the door."""
    path = tmp_path / "yard.yaml"
    path.write_text(TEXT + SKETCHES)
    return path


def test_a_sketch_is_improved(yard, tmp_path, capsys):
    """Both are drawn and measured in a result that holds what it says; the patch is what was added to its text."""
    out = tmp_path / "out"
    assert main(["improve", str(yard), "--sketch", "mine", "--out", str(out)]) == 0
    said = capsys.readouterr().out
    assert "mine breaks" in said
    assert "table moved 1.5 ft to the north" in said
    told = json.loads((out / "improve.json").read_text())
    assert (told["status"], told["improved"], told["plan"]) == ("nearest", "mine, improved", "sketch-02.svg")
    assert told["distance_ft"] == pytest.approx(1.5)
    assert told["changes"] == ["table moved 1.5 ft to the north"]
    result = json.loads((out / "options.json").read_text())
    assert [bool(option["findings"]) for option in result["options"]] == [True, False]
    assert told["ways_out"][0]["patch"][0]["value"] in json.loads(result["scenario"]["text"])["sketches"]
    assert (out / "sketch-02.svg").read_text().startswith("<svg")
    assert main(["recheck", str(out / "options.json")]) == 0


def test_what_cannot_be_improved_is_said(yard, tmp_path, capsys):
    """A name that there is not; a sketch that keeps all; a yard in which nothing fits."""
    out = ["--out", str(tmp_path / "out")]
    assert main(["improve", str(yard), "--sketch", "mien", *out]) == 2
    assert "found 'mien'; there is mine" in capsys.readouterr().err
    yard.write_text(TEXT + SKETCHES.replace("10.5", "12"))
    assert main(["improve", str(yard), "--sketch", "mine", *out]) == 0
    assert "The sketch keeps every rule as it is." in capsys.readouterr().out
    yard.write_text(TEXT.replace("width: 12, depth: 8, seats: 4", "width: 36, depth: 28, seats: 4") + SKETCHES)
    assert main(["improve", str(yard), "--sketch", "mine", *out]) == 3
    assert "No layout of the required rooms keeps the rules" in capsys.readouterr().out
