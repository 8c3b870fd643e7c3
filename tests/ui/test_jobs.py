"""A search as a child process: started, followed, stopped, and handed over when it has ended."""

import os
import signal
import sys
from pathlib import Path
from time import monotonic, sleep

import pytest

from ui import jobs
from ui.jobs import Asked, BusyError, JobTable, files_in, search_command, so_far_in

SHORT = Asked("options", "name: x", 5.0)


def wait_until(is_so, *, seconds=10.0):
    """Wait for something, and say whether it came."""
    end = monotonic() + seconds
    while not is_so() and monotonic() < end:
        sleep(0.02)
    return is_so()


@pytest.fixture
def table(tmp_path):
    """A table of searches that keeps nothing of them."""
    return JobTable(tmp_path / "searches", lambda job: None)


def started(table, asked=SHORT):
    """A search that has begun."""
    return table.start(asked, lambda job: None)


@pytest.mark.parametrize("kind", ["options", "budgets"])
def test_command_is_what_a_person_would_type(kind):
    """The page starts the command of this installation, with JSON progress, and nothing else."""
    command = search_command(kind, Path("yard.yaml"), Path("out"), 20.0)
    assert command[:3] == (sys.executable, "-m", "optimizer")
    assert command[3:] == (kind, "yard.yaml", "--out", "out", "--seconds", "20", "--progress", "json")


def test_a_search_goes_on_from_the_concepts_found():
    """What was found before is handed on with --from."""
    command = search_command("budgets", Path("yard.yaml"), Path("out"), 50.0, Path("a/start.json"))
    assert command[-2:] == ("--from", "a/start.json")


def test_a_question_is_written_where_its_answer_is_looked_for():
    """With --json in the place of --out, and its own words last."""
    command = search_command("why", Path("yard.yaml"), Path("out"), 20.0, Path("s.json"), ("--room=-x", "--sun"))
    assert command[3:] == (
        *("why", "yard.yaml", "--json", "out/why.json", "--seconds", "20", "--progress", "json"),
        *("--from", "s.json", "--room=-x", "--sun"),
    )


def test_search_runs_to_its_end(searches, table):
    """Events are read as they are, other lines are passed over, the child is reaped and its result is there."""
    job = started(table)
    assert wait_until(lambda: not job.is_running)
    assert [event["event"] for event in job.events] == ["started", "stage", "option", "done"]
    assert job.process.returncode == 0
    assert {"options.json", "c1.svg"} <= set(files_in(job.folder))


def test_what_ended_is_handed_over_before_it_counts_as_ended(searches, tmp_path):
    """Whoever sees that it has ended finds that it was kept."""
    kept = []
    table = JobTable(tmp_path, lambda job: kept.append(job.is_running and set(files_in(job.folder))))
    job = started(table)
    assert wait_until(lambda: not job.is_running)
    assert "options.json" in kept[0]


def test_scenario_and_start_reach_the_child(searches, table, monkeypatch):
    """What the child reads is the text that the page was given, byte for byte, and the result to go on from."""
    seen = []
    monkeypatch.setattr(
        jobs,
        "search_command",
        lambda kind, scenario, out, s, start, *_: seen.extend((scenario, start)) or (sys.executable, "-c", ""),
    )
    started(table, Asked("options", "name: Größe\n", 5.0, b"{}"))
    assert seen[0].read_bytes() == "name: Größe\n".encode()
    assert seen[1].read_bytes() == b"{}"


def test_stop_keeps_the_best_so_far(searches, table):
    """A search that is asked to stop ends by itself and leaves its result."""
    searches("until_stopped")
    job = started(table)
    assert wait_until(lambda: len(job.events) >= 3)
    assert job.is_running
    job.stop()
    assert wait_until(lambda: not job.is_running)
    assert job.process.returncode == 0
    assert "options.json" in files_in(job.folder)


def test_a_killed_search_leaves_the_best_so_far(searches, table):
    """A child that is killed writes nothing any more; what it wrote on its way is there."""
    searches("until_stopped")
    job = started(table)
    assert wait_until(lambda: so_far_in(job.folder) is not None)
    os.kill(job.process.pid, signal.SIGKILL)
    assert wait_until(lambda: not job.is_running)
    assert set(files_in(job.folder)) == {"so-far.json"}


def test_more_searches_than_the_server_bears_are_refused(searches, table):
    """With as many searches as may run, another is refused; with one ended, it is taken."""
    searches("until_stopped")
    running = [started(table) for _ in range(jobs.MOST_RUNNING)]
    with pytest.raises(BusyError):
        started(table)
    wait_until(lambda: all(len(job.events) >= 3 for job in running))
    running[0].stop()
    assert wait_until(lambda: not running[0].is_running)
    searches("at_once")
    another = started(table)
    assert wait_until(lambda: not another.is_running)
    for job in running:
        job.stop()
        job.process.wait()


def test_a_search_that_cannot_be_noted_is_ended(searches, table):
    """Nobody would find it again: it must not keep the computer busy."""

    def refuse(job):
        raise OSError("no room")

    searches("until_stopped")
    with pytest.raises(OSError, match="no room"):
        table.start(SHORT, refuse)
    assert wait_until(lambda: not any(job.is_running for job in table.jobs))


def test_searches_that_have_ended_are_not_held_for_ever(searches, table):
    old = started(table)
    assert wait_until(lambda: not old.is_running)
    new = started(table)
    assert table.jobs == (new,)
    assert wait_until(lambda: not new.is_running)
