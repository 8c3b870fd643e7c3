"""The main job: what it writes, prints and exits with, and how it ends when it is asked to."""

import json
import os
import signal
import subprocess
import sys
import time
from itertools import pairwise
from pathlib import Path

import pytest

from optimizer.cli import main
from optimizer.results.read import read_result
from tests.optimizer.cli import fake_command
from tests.sample_run import YARD, sample_set

SCRIPT = Path(fake_command.__file__)


def call(capsys, *arguments) -> tuple[int, str, str]:
    """Exit status, standard output and standard error of `options` with these arguments."""
    status = main(["options", *(str(argument) for argument in arguments)])
    out, err = capsys.readouterr()
    return status, out, err


def start(tmp_path, engine: str, *arguments: str, **streams) -> subprocess.Popen:
    """Start `options` as a process of its own, on the engine named."""
    command = [sys.executable, str(SCRIPT), "options", str(YARD), "--out", str(tmp_path / "out"), *arguments]
    streams = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **streams}
    environment = {**os.environ, "FAKE_ENGINE": engine}
    return subprocess.Popen(command, env=environment, text=True, **streams)


def first_concept(process: subprocess.Popen) -> None:
    """Wait until the process says that it has found a concept."""
    for line in process.stdout:
        if json.loads(line)["event"] == "option":
            return
    pytest.fail(f"ended before a concept: {process.stderr.read()}")


def test_a_run_writes_and_prints(capsys, engine, tmp_path):
    """Result, table and a plan of each concept are written; the ranked table goes to standard output without colours."""
    engine("two")
    status, out, err = call(capsys, YARD, "--out", tmp_path / "new" / "out", "--count", 2)
    assert status == 0
    written = {path.name for path in (tmp_path / "new" / "out").iterdir()}
    assert written == {"options.json", "options.csv", "a1.svg", "a2.svg"}
    assert read_result(tmp_path / "new" / "out" / "options.json").option_set == sample_set(2)
    assert "\x1b" not in out + err
    for words in ("rank", "walking ft", "phase 1 USD", "a1", "7,769", "1,234", "fire feature", "Shortest way from"):
        assert words in out
    assert "Looking for layouts" in err


def test_fewer_than_asked_is_said(capsys, engine, tmp_path):
    """The scenario asks for twelve: two are a success, and the reason is said."""
    engine("two")
    status, out, _ = call(capsys, YARD, "--out", tmp_path)
    assert status == 0
    assert "2 of 12 concepts: no more were found" in out


@pytest.mark.parametrize(
    ("what", "expected", "words"),
    [
        ("nothing_fits", 3, "Nothing fits: the fire feature has no place"),
        ("undecided", 4, "Undecided: no concept was found before the time given ended"),
    ],
)
def test_a_run_without_concepts_is_written_and_told(capsys, engine, tmp_path, what, expected, words):
    """Where nothing fits or nothing is decided the result says so, and so do the screen and the exit status."""
    engine(what)
    status, out, _ = call(capsys, YARD, "--out", tmp_path)
    assert status == expected
    assert words in out
    assert read_result(tmp_path / "options.json").option_set.search.status == what


def test_a_place_that_cannot_be_written_is_told_before_the_work(capsys, engine, tmp_path):
    """A file in place of the folder exits with 2 before the engine is asked."""
    engine("fault")
    (tmp_path / "file").touch()
    status, out, err = call(capsys, YARD, "--out", tmp_path / "file")
    assert (status, out) == (2, "")
    assert "expected a folder to write results to" in err


def test_a_problem_that_the_engine_tells_is_told(capsys, engine, tmp_path):
    """A problem of the scenario that only prices show exits with 2 and leaves no result."""
    engine("other_currency")
    status, _, err = call(capsys, YARD, "--out", tmp_path)
    assert status == 2
    assert "yard.yaml:9:1: expected a currency with prices" in err
    assert list(tmp_path.iterdir()) == []


def test_a_fault_of_the_engine_leaves_nothing(capsys, engine, tmp_path):
    """A fault in the working thread exits with 1 and leaves no result."""
    engine("fault")
    status, _, err = call(capsys, YARD, "--out", tmp_path)
    assert status == 1
    assert "RuntimeError: the engine broke" in err
    assert list(tmp_path.iterdir()) == []


def test_events_are_lines_of_json(capsys, engine, tmp_path):
    """With JSON, standard output is one object a line, from started to done; the table goes to standard error."""
    engine("two")
    status, out, err = call(capsys, YARD, "--out", tmp_path, "--progress", "json")
    events = [json.loads(line) for line in out.splitlines()]
    assert status == 0
    assert [event["event"] for event in events] == ["started", "stage", "option", "stage", "done"]
    assert events[2]["found"] == 1
    assert events[-1].items() >= {"exit": 0, "status": "bounded", "stopped": False, "found": 2}.items()
    elapsed = [event["elapsed_s"] for event in events]
    assert elapsed == sorted(elapsed)
    assert "Shortest way from" in err


def test_problems_are_events_too(capsys, engine, tmp_path):
    """With JSON, what is wrong is an event with its text, and is on standard error as well."""
    engine("two")
    status, out, err = call(capsys, tmp_path / "missing.yaml", "--out", tmp_path, "--progress", "json")
    last = json.loads(out.splitlines()[-1])
    assert status == last["exit"] == 2
    assert last["event"] == "problem"
    assert last["text"] in err


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_a_signal_keeps_the_best_so_far(tmp_path, number):
    """Ctrl-C or an end asked for, thrice, writes what was found and exits with 0, the result marked as stopped."""
    process = start(tmp_path, "until_stopped", "--progress", "json")
    first_concept(process)
    for _ in range(3):
        process.send_signal(number)
        time.sleep(0.1)
    out, err = process.communicate(timeout=30)
    assert process.returncode == 0, err
    assert json.loads(out.splitlines()[-1])["stopped"] is True
    assert read_result(tmp_path / "out" / "options.json").option_set.search.stopped
    assert "Stopped on request" in err


def test_a_killed_run_leaves_the_best_so_far(tmp_path):
    """Whoever reads events finds the best so far beside where the result will be, whole at any moment."""
    process = start(tmp_path, "until_stopped", "--progress", "json")
    first_concept(process)
    first_concept(process)
    process.kill()
    process.communicate(timeout=30)
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["so-far.json"]
    assert len(read_result(tmp_path / "out" / "so-far.json").option_set.options) == 1


def test_a_run_that_ends_leaves_its_result_alone(tmp_path):
    """What was so far is gone once all of it is written."""
    process = start(tmp_path, "until_stopped", "--progress", "json")
    first_concept(process)
    first_concept(process)
    process.send_signal(signal.SIGTERM)
    process.communicate(timeout=30)
    assert {path.name for path in (tmp_path / "out").iterdir()} == {"options.json", "options.csv", "a1.svg", "a2.svg"}


def test_a_signal_before_anything_is_found(tmp_path):
    """Stopped with nothing found exits with 4."""
    process = start(tmp_path, "stopped_early", "--progress", "json")
    first_concept(process)
    process.send_signal(signal.SIGINT)
    _, err = process.communicate(timeout=30)
    assert process.returncode == 4
    assert "before it was stopped" in err


def test_there_is_a_sign_of_life_every_second(tmp_path):
    """While the engine is silent a line comes at least every second."""
    process = start(tmp_path, "until_stopped", "--progress", "json")
    times = []
    for line in process.stdout:
        event = json.loads(line)
        times.append(event["elapsed_s"])
        if event["event"] == "alive" and times[-1] > 2.2:
            break
    process.send_signal(signal.SIGTERM)
    process.communicate(timeout=30)
    assert max(later - earlier for earlier, later in pairwise(times)) < 1.0


def test_a_reader_who_leaves_ends_the_run(tmp_path):
    """Where nobody reads the events any more the run ends by itself, with what it has, and exits with 0."""
    process = start(tmp_path, "until_stopped", "--progress", "json")
    first_concept(process)
    process.stdout.close()
    assert process.wait(timeout=30) == 0
    assert process.stderr.read().count("Traceback") == 0
    process.stderr.close()
    assert read_result(tmp_path / "out" / "options.json").option_set.search.stopped


def test_a_table_that_nobody_reads_is_no_fault(tmp_path):
    """Standard output that is closed at once changes neither the exit status nor what is written."""
    read_end, write_end = os.pipe()
    os.close(read_end)
    process = start(tmp_path, "two", stdout=write_end)
    os.close(write_end)
    _, err = process.communicate(timeout=30)
    assert process.returncode == 0, err
    assert "Traceback" not in err
    assert "BrokenPipe" not in err
    assert (tmp_path / "out" / "options.json").is_file()


def test_a_terminal_that_knows_few_characters(tmp_path):
    """Characters that the terminal does not know are escaped, which is no fault."""
    yard = tmp_path / "yard.yaml"
    yard.write_text(YARD.read_text(encoding="utf-8").replace("Fernhollow Court", "Fernhöhle"), encoding="utf-8")
    command = [sys.executable, str(SCRIPT), "check", str(yard)]
    environment = {**os.environ, "PYTHONIOENCODING": "ascii"}
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert "Fernh\\xf6hle" in done.stdout
