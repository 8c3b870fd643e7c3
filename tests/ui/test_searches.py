"""Searches that are kept: after their end, after the end of the server, and after a kill."""

import os
import signal
import subprocess
import sys
import time
from dataclasses import replace

import pytest

from tests.ui.test_jobs import wait_until
from ui.jobs import BusyError
from ui.searches import Searching
from ui.store import SearchRecord, open_store


@pytest.fixture
def kept(tmp_path):
    """What is kept, in a folder of its own."""
    return open_store(str(tmp_path / "kept"))


@pytest.fixture
def here(kept, tmp_path, searches):
    """The searches of one server."""
    found = Searching(kept, tmp_path / "searches")
    yield found
    for job in found.table.jobs:
        job.stop()
        job.process.wait()


def ended(here, search):
    """The search once it has ended."""
    assert wait_until(lambda: not here.get(search.id).is_running)
    return here.get(search.id)


def test_what_a_search_found_is_there_after_a_restart(here, kept, tmp_path):
    """Another server on the same database shows the same concepts and plans, and no folder is left behind."""
    revision = kept.revisions.open("Larch End", "name: x")
    found = ended(here, here.start(revision, seconds=5))
    again = Searching(open_store(str(tmp_path / "kept")), tmp_path / "searches")
    assert [option.id for option in again.get(found.id).result().option_set.options] == ["c1", "c2", "c3", "c4"]
    assert again.get(found.id).plan_svg("c1").startswith("<svg")
    assert again.newest(revision).id == found.id
    assert not list((tmp_path / "searches").iterdir())


def test_the_result_of_an_ended_search_is_read_once(here, kept, monkeypatch):
    """However often the page asks for it: it stays as it is."""
    found = ended(here, here.start(kept.revisions.open("Larch End", "name: x"), seconds=5))
    first = found.result()
    monkeypatch.setattr(type(kept.searches), "file", lambda *_: pytest.fail("its file was fetched again"))
    assert here.get(found.id).result() is first


def test_a_running_search_shows_the_best_so_far(here, kept, searches):
    searches("until_stopped")
    search = here.start(kept.revisions.open("Larch End", "name: x"), seconds=60)
    assert wait_until(lambda: here.get(search.id).document() is not None)
    assert here.get(search.id).is_running
    assert len(here.get(search.id).result().option_set.options) == 4


def test_a_killed_search_keeps_the_best_so_far_and_can_be_gone_on_from(here, kept, searches):
    """Killed from outside it is told so; what it had found is kept, and the next search begins from that."""
    searches("until_stopped")
    revision = kept.revisions.open("Larch End", "name: x")
    search = here.start(revision, seconds=60)
    assert wait_until(lambda: here.get(search.id).document() is not None)
    os.kill(search.job.process.pid, signal.SIGKILL)
    killed = ended(here, search)
    assert killed.was_cut_off
    assert len(killed.result().option_set.options) == 4
    searches("at_once")
    again = ended(here, here.start(revision, seconds=5, start_from=killed))
    assert again.record.start_from == killed.id
    assert not again.was_cut_off


def test_a_search_without_a_result_says_why(here, kept, searches):
    searches("refused")
    search = ended(here, here.start(kept.revisions.open("Larch End", "name: x"), seconds=5))
    assert search.document() is None
    assert not search.was_cut_off
    assert "expected a boundary" in search.said[0]


def left_behind(kept, folder, process):
    """A search that another server began and left."""
    revision = kept.revisions.open("Larch End", "name: x")
    record = SearchRecord(
        "left",
        revision.id,
        "options",
        20.0,
        None,
        process,
        str(folder),
        (),
        was_cut_off=False,
        began_at=time.time(),
        ended_at=None,
    )
    kept.searches.begin(record)
    return record


def test_a_search_of_an_ended_server_is_kept_by_the_next_one(here, kept, ready, tmp_path):
    """Its process is gone, its folder has a result: it is taken in, and the folder goes."""
    folder = tmp_path / "left"
    (folder / "out").mkdir(parents=True)
    (folder / "out" / "options.json").write_bytes((ready / "options.json").read_bytes())
    child = subprocess.Popen((sys.executable, "-c", ""))
    child.wait()
    left_behind(kept, folder, child.pid)
    search = here.get("left")
    assert not search.is_running
    assert len(search.result().option_set.options) == 4
    assert not folder.exists()


def test_a_search_that_goes_on_after_its_server_is_shown_as_running(here, kept, tmp_path):
    """Its process lives: it is left alone until it has ended, or is far beyond its time."""
    folder = tmp_path / "left"
    folder.mkdir()
    with subprocess.Popen((sys.executable, "-c", "import time; time.sleep(60)")) as child:
        record = left_behind(kept, folder, child.pid)
        assert here.get("left").is_running
        assert [event["event"] for event in here.get("left").events] == ["alive"]
        kept.searches.begin(replace(record, id="late", began_at=time.time() - 1000))
        assert not here.get("late").is_running
        child.kill()
        child.wait()
        assert not here.get("left").is_running


class Ending:
    """A job that ends right after it was first asked whether it runs."""

    def __init__(self):
        self._answers = iter([True])

    @property
    def is_running(self):
        return next(self._answers, False)


def test_a_search_that_ends_while_it_is_looked_at(here, kept, tmp_path, ready, monkeypatch):
    """Its record was read before its end: it is shown as running once more, never as ended without a result; and what
    it wrote is found though its folder has gone.
    """
    left_behind(kept, tmp_path / "gone", os.getpid())
    monkeypatch.setattr(here.table, "get", lambda _: ending)
    ending = Ending()
    found = here.get("left")
    assert found.is_running
    assert found.result() is None
    assert found.is_running
    kept.searches.keep("left", {"options.json": (ready / "options.json").read_bytes()})
    assert len(found.result().option_set.options) == 4


def test_an_opened_result_is_a_search_that_has_ended(here, kept, ready):
    revision = kept.revisions.open("Larch End", "name: x")
    search = here.opened(revision, (ready / "options.json").read_bytes())
    assert not search.is_running
    assert len(search.result().option_set.options) == 4


def test_budgets_begin_from_the_concepts_and_are_found_beside_them(here, kept):
    revision = kept.revisions.open("Larch End", "name: x")
    search = ended(here, here.start(revision, seconds=5))
    budgets = ended(here, here.start_budgets(search, seconds=5))
    assert budgets.record.start_from == search.id
    assert budgets.file("budgets.csv")
    assert here.newest(revision).id == search.id
    assert here.newest(revision, "budgets").id == budgets.id


def test_a_busy_server_notes_no_search(here, kept, searches, monkeypatch):
    monkeypatch.setattr("ui.jobs.MOST_RUNNING", 0)
    revision = kept.revisions.open("Larch End", "name: x")
    with pytest.raises(BusyError):
        here.start(revision, seconds=5)
    assert here.newest(revision) is None
