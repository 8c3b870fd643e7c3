"""A search as a child process: started, followed, stopped, reaped, kept apart and forgotten."""

import sys
from pathlib import Path
from time import monotonic, sleep

import pytest

from ui import jobs
from ui.jobs import BusyError, JobTable, budgets_command, options_command


def wait_until(is_so, *, seconds=10.0):
    """Wait for something, and say whether it came."""
    end = monotonic() + seconds
    while not is_so() and monotonic() < end:
        sleep(0.02)
    return is_so()


def test_command_is_what_a_person_would_type():
    """The page starts the options command of this installation, with JSON progress, and nothing else."""
    command = options_command(Path("yard.yaml"), Path("out"), 20.0)
    assert command[:3] == (sys.executable, "-m", "optimizer")
    assert command[3:] == ("options", "yard.yaml", "--out", "out", "--seconds", "20", "--progress", "json")


def test_budgets_start_from_the_concepts_found():
    """The page starts the budgets command from the result of the search."""
    command = budgets_command(Path("yard.yaml"), Path("out"), 50.0, Path("a/options.json"))
    assert command[3:] == (
        *("budgets", "yard.yaml", "--out", "out", "--seconds", "50", "--from", "a/options.json"),
        *("--progress", "json"),
    )


def test_search_runs_to_its_end(searches):
    """Events are read as they are, other lines are passed over, the child is reaped and its result is there."""
    job = JobTable().start("name: x", seconds=5)
    assert wait_until(lambda: not job.is_running)
    assert [event["event"] for event in job.events] == ["started", "stage", "option", "done"]
    assert job.process.returncode == 0
    assert job.result_path.is_file()


def test_scenario_reaches_the_child(searches, monkeypatch):
    """What the child reads is the text that the page was given, byte for byte."""
    seen = []
    monkeypatch.setattr(
        jobs, "options_command", lambda scenario, *_: seen.append(scenario) or (sys.executable, "-c", "")
    )
    JobTable().start("name: Größe\n", seconds=5)
    assert seen[0].read_bytes() == "name: Größe\n".encode()


def test_stop_keeps_the_best_so_far(searches):
    """A search that is asked to stop ends by itself and leaves its result."""
    searches("until_stopped")
    job = JobTable().start("name: x", seconds=60)
    assert wait_until(lambda: len(job.events) >= 3)
    assert job.is_running
    job.stop()
    assert wait_until(lambda: not job.is_running)
    assert job.process.returncode == 0
    assert job.result_path.is_file()


def test_more_searches_than_the_server_bears_are_refused(searches):
    """With as many searches as may run, another is refused; with one ended, it is taken."""
    searches("until_stopped")
    table = JobTable()
    running = [table.start("name: x", seconds=60) for _ in range(jobs.MOST_RUNNING)]
    with pytest.raises(BusyError):
        table.start("name: x", seconds=60)
    wait_until(lambda: all(len(job.events) >= 3 for job in running))
    running[0].stop()
    assert wait_until(lambda: not running[0].is_running)
    searches("at_once")
    another = table.start("name: x", seconds=60)
    assert wait_until(lambda: not another.is_running)
    for job in running:
        job.stop()
        job.process.wait()


def test_old_searches_are_forgotten_with_their_files(searches, monkeypatch):
    """A search that ended long ago is dropped, and its folder removed, when the next one starts."""
    table = JobTable()
    old = table.start("name: x", seconds=5)
    assert wait_until(lambda: not old.is_running)
    monkeypatch.setattr(jobs, "KEPT_S", -1.0)
    new = table.start("name: x", seconds=5)
    assert table.get(old.id) is None
    assert not old.folder.exists()
    assert table.get(new.id) is new
    assert wait_until(lambda: not new.is_running)


def test_plan_of_another_place_is_not_read(searches, tmp_path):
    """An id that points out of the search's own folder yields no plan."""
    job = JobTable().start("name: x", seconds=5)
    assert wait_until(lambda: not job.is_running)
    (job.folder.parent / "other.svg").write_text("<svg/>")
    assert job.plan_svg("c1").startswith("<svg")
    assert job.plan_svg("../other") is None
    assert job.plan_svg("none") is None
