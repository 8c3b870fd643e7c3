"""The command that writes one picture of a concept."""

import pytest

from optimizer.cli import main
from optimizer.cli.picture import KINDS, read_line
from optimizer.results.write import to_text
from optimizer.scenario import load_scenario
from tests.sample_run import sample_document


@pytest.fixture
def result_path(tmp_path):
    """Stored result of two concepts."""
    path = tmp_path / "options.json"
    path.write_text(to_text(sample_document()), encoding="utf-8")
    return path


def call(result_path, *more, of="ground", option="a2", name="out.svg"):
    """Exit status of a call, and where it writes."""
    out = result_path.parent / name
    arguments = ("picture", result_path, "--option", option, "--of", of, "--out", out, *more)
    return main([str(argument) for argument in arguments]), out


@pytest.mark.parametrize("of", KINDS)
def test_every_picture_is_written(result_path, of):
    """Each kind writes a file of its form that names the concept or its yard."""
    status, out = call(result_path, of=of, name=f"out{KINDS[of]}")
    text = out.read_text(encoding="utf-8")
    assert status == 0
    assert ("Concept 2: " if of != "yard" else "Fernhollow Court") in text
    assert text.lstrip().startswith("<svg" if of != "yard" else "<!doctype html>")


@pytest.mark.parametrize(
    ("of", "more", "words"),
    [
        ("sun", ("--room", "quiet nook"), "sun, quiet nook"),
        ("sight", ("--room", "neighbour window"), "seen from neighbour window"),
        ("section", ("--line", "0,60,100,60", "--on", "2026-12-21T12:30"), "21 December, 12:30"),
        ("section", ("--room", "quiet nook"), "quiet nook"),
    ],
)
def test_a_picture_shows_what_is_asked_for(result_path, of, more, words):
    """Room, viewer, line and moment are those of the call."""
    status, out = call(result_path, *more, of=of)
    assert status == 0
    assert words in out.read_text(encoding="utf-8")


@pytest.mark.parametrize("line", ["0,18.288,30.48,18.288", "0, 60 ft, 100', 720 in"])
def test_a_line_in_the_files_own_unit(line):
    """60 ft across the yard, for a file in metres: bare numbers are metres, text says its unit."""
    metric = load_scenario("scenarios/wattle-rise.yaml")
    (x1, y1), (x2, y2) = read_line(line, metric)
    assert (x1, y1, x2, y2) == pytest.approx((0, 60, 100, 60))


@pytest.mark.parametrize(
    ("changes", "more", "words"),
    [
        ({"of": "smell"}, (), "--of: expected a picture of sun, ground, sight, section, yard, found 'smell'"),
        ({"of": "yard"}, (), "--out: expected a file that ends in .html, found 'out.svg'"),
        ({"option": "a9"}, (), "--option: expected a concept of options.json, found 'a9'; it has a1, a2"),
        ({"of": "sun"}, ("--room", "water reserve"), "--room: expected a room with a wish for sun or shade, or a day"),
        ({"of": "sight"}, ("--room", "nobody"), "--room: expected a room, door, window or neighbour's eye"),
        ({"of": "section"}, ("--room", "nobody"), "--room: expected a room that is placed"),
        ({"of": "section"}, ("--on", "noon"), "--on: expected a moment such as 2026-06-21T17:00, found 'noon'"),
        ({"of": "section"}, ("--on", "2026-02-30T17:00"), "--on: expected a moment"),
        ({"of": "section"}, ("--line", "1,2,3"), "--line: expected x1,y1,x2,y2 on the plan, in ft or with units"),
        ({"of": "section"}, ("--line", "0,0,nan,9"), "--line: expected x1,y1,x2,y2"),
        ({"of": "section"}, ("--line", "5,5,5,6"), "--line: expected x1,y1,x2,y2"),
    ],
)
def test_a_picture_that_cannot_be_is_told(capsys, result_path, changes, more, words):
    """What cannot be shown exits with 2, says what can, and writes nothing."""
    status, out = call(result_path, *more, **changes)
    assert status == 2
    assert words in capsys.readouterr().err
    assert not out.exists()
