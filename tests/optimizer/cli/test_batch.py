"""Many yards: here and on a cluster, begun again, with bad files among them."""

import csv
import json
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from optimizer.cli import batch_command, main
from optimizer.cli.yard_run import YardDone, run_yard
from tests.small_yard import SMALL


def call(capsys, *arguments) -> tuple[int, str, str]:
    """Exit status, standard output and standard error of `batch` with these arguments."""
    status = main(["batch", *(str(argument) for argument in arguments)])
    return status, *capsys.readouterr()


def rows(out: Path) -> dict[str, dict[str, str]]:
    """Rows of the table by file."""
    with (out / "batch.csv").open(encoding="utf-8", newline="") as file:
        return {row["file"]: row for row in csv.DictReader(file)}


@pytest.fixture
def yards(tmp_path):
    """A folder of two small yards, a bad one, and a file that is none."""
    folder = tmp_path / "yards"
    folder.mkdir()
    (folder / "a.yaml").write_text(SMALL)
    (folder / "b.yaml").write_text(SMALL.replace("Small Yard", "Other Yard"))
    (folder / "bad.yaml").write_text("schema_version: 1\nname: 3\n")
    (folder / "notes.txt").write_text("no yard")
    return folder


@pytest.fixture
def ran(monkeypatch):
    """Names of what was run, by a made-up run that finds nothing."""
    names = []

    def made_up(name, data, arguments, beside):
        names.append(name)
        return YardDone(4, 1.0, "", {})

    monkeypatch.setattr(batch_command, "run_yard", made_up)
    return names


def test_a_bad_file_never_stops_the_rest(capsys, yards, tmp_path):
    """Each file has its row: concepts where there are some, the report where it is wrong; results lie in folders."""
    status, out, _ = call(capsys, yards, "--out", tmp_path / "out", "--seconds", 1, "--count", 2)
    assert status == 0
    found = rows(tmp_path / "out")
    assert list(found) == ["a.yaml", "b.yaml", "bad.yaml"]
    assert (found["a.yaml"]["status"], found["a.yaml"]["exit"]) == ("done", "0")
    assert int(found["a.yaml"]["concepts"]) >= 1
    assert float(found["a.yaml"]["best_score"]) > 0
    assert float(found["a.yaml"]["cost"]) > 0
    assert (tmp_path / "out" / "a" / "options.json").is_file()
    assert (found["bad.yaml"]["status"], found["bad.yaml"]["exit"]) == ("wrong input", "2")
    assert "bad.yaml:2:" in found["bad.yaml"]["message"]
    assert "expected" in found["bad.yaml"]["message"]
    assert "3 scenarios, 0 of them done before" in out


def test_what_was_run_is_not_run_again(capsys, yards, tmp_path, ran):
    """The same content with the same options is passed over; a changed file, other options, or a fault is not."""
    call(capsys, yards, "--out", tmp_path / "out")
    assert sorted(ran) == ["a.yaml", "b.yaml", "bad.yaml"]
    call(capsys, yards, "--out", tmp_path / "out")
    assert len(ran) == 3
    (yards / "b.yaml").write_text(SMALL + "\n")
    call(capsys, yards, "--out", tmp_path / "out")
    assert ran[3:] == ["b.yaml"]
    call(capsys, yards, "--out", tmp_path / "out", "--seed", 5)
    assert len(ran) == 7


def test_a_fault_is_run_again(capsys, yards, tmp_path, monkeypatch):
    """A process that was killed has its row, and its file is tried the next time."""
    tried = []
    monkeypatch.setattr(
        batch_command, "run_yard", lambda name, *_: tried.append(name) or YardDone(-9, 1.0, "killed", {})
    )
    call(capsys, yards, "--out", tmp_path / "out")
    assert {row["status"] for row in rows(tmp_path / "out").values()} == {"fault"}
    call(capsys, yards, "--out", tmp_path / "out")
    assert len(tried) == 6


def test_a_run_that_was_stopped_is_run_again(capsys, yards, tmp_path, monkeypatch):
    """Its best so far counts as stopped; a layout of one's own is no concept."""
    found = {
        "options": [{"sketch": None, "score": 2.0, "cost": {"phases": {"1": "3.00"}}}, {"sketch": "mine"}],
        "search": {"stopped": True},
    }
    done = YardDone(0, 1.0, "", {"options.json": json.dumps(found)})
    tried = []
    monkeypatch.setattr(batch_command, "run_yard", lambda name, *_: tried.append(name) or done)
    call(capsys, yards, "--out", tmp_path / "out")
    row = rows(tmp_path / "out")["a.yaml"]
    assert (row["status"], row["concepts"], row["cost"]) == ("stopped", "1", "3.00")
    call(capsys, yards, "--out", tmp_path / "out")
    assert len(tried) == 6


def test_two_files_of_one_name_are_refused(capsys, yards, tmp_path):
    """Their results would go to one folder."""
    (yards / "a.yml").write_text(SMALL)
    status, _, err = call(capsys, yards, "--out", tmp_path / "out")
    assert status == 2
    assert "found a.yaml, a.yml" in err


def test_a_price_book_may_bear_the_name_of_its_scenario(capsys, yards, tmp_path, ran):
    """It is no scenario, and has no results that could go to the same folder."""
    (yards / "a.json").write_text("{}")
    (yards / "a.yaml").write_text(SMALL + "prices: a.json\n")
    status, _, err = call(capsys, yards, "--out", tmp_path / "out")
    assert (status, err) == (0, "")
    assert sorted(ran) == ["a.yaml", "b.yaml", "bad.yaml"]


def test_what_breaks_in_here_is_a_row_too(capsys, yards, tmp_path, monkeypatch):
    """Such as a cluster's worker that went away."""

    def breaks(name, *_):
        raise OSError("the worker went away")

    monkeypatch.setattr(batch_command, "run_yard", breaks)
    status, _, _ = call(capsys, yards, "--out", tmp_path / "out")
    assert status == 0
    assert rows(tmp_path / "out")["a.yaml"]["message"] == "could not be run: the worker went away"


def test_stopped_it_begins_nothing_more(capsys, yards, tmp_path, monkeypatch):
    """What is done is kept; the next call goes on from there."""
    stop, names = threading.Event(), []
    monkeypatch.setattr(batch_command, "stop_on_signal", lambda: stop)

    def stopping(name, *_):
        names.append(name)
        stop.set()
        return YardDone(0, 1.0, "", {})

    monkeypatch.setattr(batch_command, "run_yard", stopping)
    call(capsys, yards, "--out", tmp_path / "out", "--at-once", 1)
    assert len(rows(tmp_path / "out")) == len(names) < 3


@pytest.mark.parametrize("folder", ["none", "empty"])
def test_no_scenario_there(capsys, tmp_path, folder):
    """A folder that is not there, or has none in it: one report, nothing written."""
    (tmp_path / "empty").mkdir()
    status, _, err = call(capsys, tmp_path / folder, "--out", tmp_path / "out")
    assert status == 2
    assert "expected a folder with scenarios" in err
    assert not (tmp_path / "out").exists()


def test_a_process_that_is_ended_by_a_signal_says_so(monkeypatch):
    """As when memory runs out."""
    run = subprocess.run
    monkeypatch.setattr(
        subprocess,
        "run",
        lambda call, **kept: run(
            (sys.executable, "-c", "import os, signal; os.kill(os.getpid(), signal.SIGKILL)"), **kept
        ),
    )
    done = run_yard("a.yaml", b"", ())
    assert (done.exit, done.message) == (-9, "the process was ended by signal 9")


def test_a_cluster_of_two_workers(yards, tmp_path, capsys):
    """The same by the address of a scheduler: workers get the text and give the files back."""
    from distributed import LocalCluster

    (yards / "b.yaml").unlink()
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster:
        address = cluster.scheduler_address
        status, _, _ = call(
            capsys, yards, "--out", tmp_path / "out", "--scheduler", address, "--seconds", 1, "--count", 1
        )
    assert status == 0
    found = rows(tmp_path / "out")
    assert (found["a.yaml"]["status"], found["bad.yaml"]["status"]) == ("done", "wrong input")
    assert (tmp_path / "out" / "a" / "concept-01.svg").is_file()


def test_no_scheduler_at_the_address(capsys, yards, tmp_path, monkeypatch):
    """One report."""
    status, _, err = call(capsys, yards, "--out", tmp_path / "out", "--scheduler", "nonsense://x")
    assert status == 2
    assert "expected a scheduler at --scheduler" in err


def test_without_dask_it_is_said(capsys, yards, tmp_path, monkeypatch):
    """The extra is named."""
    monkeypatch.setitem(sys.modules, "distributed", None)
    status, _, err = call(capsys, yards, "--out", tmp_path / "out", "--scheduler", "tcp://127.0.0.1:1")
    assert status == 2
    assert "install the extra" in err
