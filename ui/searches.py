"""Searches as the page shows them: those that run here, and those that are kept, alike.

What a search wrote is kept when it ends. One that was running when its server was ended is found by its process and
its folder, and is kept by whoever asks for it next.
"""

import json
import os
import shutil
import sys
import time
from dataclasses import asdict, dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

from optimizer.results import Result, result_of
from ui.jobs import RESULT_NAMES, SO_FAR, Asked, Job, JobTable, files_in, messages_in, so_far_in
from ui.questions import Question
from ui.search_kind import SearchKind
from ui.store import Revision, SearchRecord, Store
from ui.yards import price_file

_QUESTION: Final = "question.json"
PATIENCE: Final = 4.0
"""A search that takes so many times as long as it was given, and a minute, has ended, whatever its number says."""


@dataclass(frozen=True, slots=True)
class Search:
    """One search: what is kept of it, and its job where it runs here."""

    record: SearchRecord
    store: Store
    job: Job | None
    is_running: bool
    """Whether it went on, here or elsewhere, when it was asked for: what is shown in one go speaks of one moment."""

    @property
    def id(self) -> str:
        """What it is known by."""
        return self.record.id

    @property
    def kind(self) -> SearchKind:
        """What is searched for."""
        return self.record.kind

    @property
    def seconds(self) -> float:
        """Time that it was given [s]."""
        return self.record.seconds

    @property
    def stop_asked(self) -> bool:
        """Whether it was asked to end."""
        return self.job is not None and self.job.stop_asked

    @property
    def events(self) -> tuple[dict[str, Any], ...]:
        """What it has told so far; of one that runs elsewhere the time alone is known."""
        if self.job is not None:
            return tuple(self.job.events)
        return ({"event": "alive", "elapsed_s": time.time() - self.record.began_at},) if self.is_running else ()

    @property
    def was_cut_off(self) -> bool:
        """Whether it was ended from outside, so that the best so far is what there is."""
        return self.record.was_cut_off

    @property
    def said(self) -> tuple[str, ...]:
        """What it said when it failed."""
        return self.record.said

    def stop(self) -> None:
        """Ask it to end, if it runs here."""
        if self.job is not None:
            self.job.stop()

    def file(self, name: str) -> bytes | None:
        """Return a file that it wrote, or None."""
        return self.store.searches.file(self.id, name)

    @property
    def file_names(self) -> tuple[str, ...]:
        """Names of the files that it wrote; none before it has ended."""
        return self.store.searches.file_names(self.id)

    def plan_svg(self, concept_id: str) -> str | None:
        """Return the plan of a concept as the command wrote it, or None where there is none."""
        content = self.file(f"{concept_id}.svg")
        return None if content is None else content.decode()

    def document(self) -> bytes | None:
        """Return its result, the best so far of one that runs or was cut off; None where there is none yet."""
        if self.is_running and self.record.folder is not None and (found := so_far_in(Path(self.record.folder))):
            return found
        return _kept_document(self.store, self.id, self.kind)  # it may have ended since

    def result(self) -> Result | None:
        """Return its concepts, or None where there are none yet.

        Raises
        ------
        InputError
            If what it wrote is no result.
        """
        if self.record.ended_at is not None:
            return _kept_result(self.store, self.id, self.kind)
        data = self.document()
        return None if data is None else _read(data)


def question_of(search: Search) -> Question | None:
    """Return what was asked, or None for a search that asks no question."""
    kept = search.file(_QUESTION)
    if kept is None:
        return None
    record = json.loads(kept)
    return Question(**{**record, "at": record["at"] and tuple(record["at"])})


def _kept_document(store: Store, search_id: str, kind: SearchKind) -> bytes | None:
    return store.searches.file(search_id, RESULT_NAMES[kind]) or store.searches.file(search_id, SO_FAR)


@lru_cache(maxsize=24)
def _kept_result(store: Store, search_id: str, kind: SearchKind) -> Result | None:
    """Result of a search that has ended, which stays as it is: its file is not fetched at every press."""
    data = _kept_document(store, search_id, kind)
    return None if data is None else _read(data)


@lru_cache(maxsize=24)
def _read(data: bytes) -> Result:
    return result_of(data, "options.json")


class Searching:
    """Starts searches, keeps what they find, and finds them again."""

    def __init__(self, store: Store, home: Path) -> None:
        self._store = store
        self.table = JobTable(home, self._ended)

    def start(self, revision: Revision, *, seconds: float, start_from: Search | None = None) -> Search:
        """Search for concepts of a version, from those of an earlier search if given; may raise BusyError."""
        return self._start("options", revision, seconds, start_from)

    def start_budgets(self, of: Search, *, seconds: float) -> Search:
        """Find what each budget buys in the yard of a search, from its concepts; may raise BusyError."""
        revision = self._store.revisions.get(of.record.revision_id)
        assert revision is not None
        return self._start("budgets", revision, seconds, of)

    def ask_why(self, revision: Revision, question: Question, of: Search, *, seconds: float) -> Search:
        """Ask why a room is as it is in a concept of a search, of a version of its yard; may raise BusyError."""
        found = self._start("why", revision, seconds, of, question.words_of_command)
        self._store.searches.keep(found.id, {_QUESTION: json.dumps(asdict(question)).encode()})
        return found

    def improve(self, revision: Revision, sketch: str, of: Search, *, seconds: float) -> Search:
        """Find the layout nearest to a sketch of a version that keeps the rules; may raise BusyError."""
        return self._start("improve", revision, seconds, of, (f"--sketch={sketch}",))

    def opened(self, revision: Revision, document: bytes) -> Search:
        """Keep a result that a person brings along as a search that has ended."""
        search_id = f"opened-{revision.id}-{time.time_ns():x}"[:24]
        record = SearchRecord(search_id, revision.id, "options", 0.0, None, None, None, (), False, time.time(), None)  # noqa: FBT003
        self._store.searches.begin(record)
        self._store.searches.keep(search_id, {RESULT_NAMES["options"]: document})
        self._store.searches.end(search_id, said=(), was_cut_off=False)
        found = self.get(search_id)
        assert found is not None
        return found

    def get(self, search_id: str | None) -> Search | None:
        """Return the search of that id, or None; one that ended unseen is kept first."""
        job = self.table.get(search_id)
        works = job is not None and job.is_running  # before its record is read, which is whole once it works no more
        record = self._store.searches.get(search_id or "")
        if record is None:
            return None
        if job is None and record.ended_at is None and not _goes_on(record):
            self._keep(record.id, Path(record.folder or ""), messages_in(Path(record.folder or "")))
            record = self._store.searches.get(record.id) or record
        return Search(record, self._store, job, is_running=record.ended_at is None and (job is None or works))

    def newest(self, revision: Revision, kind: SearchKind = "options") -> Search | None:
        """Return the last search of a version, or None."""
        records = self._store.searches.of_revision(revision.id, kind)
        return self.get(records[-1].id) if records else None

    def _start(
        self,
        kind: SearchKind,
        revision: Revision,
        seconds: float,
        start_from: Search | None,
        further: tuple[str, ...] = (),
    ) -> Search:
        known = None if start_from is None else start_from.document()
        start_id = None if start_from is None or known is None else start_from.id

        def begun(job: Job) -> None:
            where = (job.process.pid, str(job.folder))
            record = SearchRecord(job.id, revision.id, kind, seconds, start_id, *where, (), False, time.time(), None)  # noqa: FBT003
            self._store.searches.begin(record)

        job = self.table.start(Asked(kind, revision.text, seconds, known, further, price_file(revision)), begun)
        found = self.get(job.id)
        assert found is not None
        return found

    def _ended(self, job: Job) -> None:
        self._keep(job.id, job.folder, job.said)

    def _keep(self, search_id: str, folder: Path, said: tuple[str, ...]) -> None:
        files = files_in(folder)
        is_whole = any(name in files for name in RESULT_NAMES.values())
        if is_whole:
            files.pop(SO_FAR, None)
        self._store.searches.keep(search_id, files)
        self._store.searches.end(search_id, said=said, was_cut_off=not is_whole and SO_FAR in files)
        if folder.name == search_id:
            shutil.rmtree(folder, ignore_errors=True)


def _goes_on(record: SearchRecord) -> bool:
    """Whether a search that another server has started, or this one before it was ended, still goes on."""
    is_late = time.time() - record.began_at > PATIENCE * record.seconds + 60.0
    return not is_late and record.process is not None and _is_alive(record.process)


def _is_alive(process: int) -> bool:
    if sys.platform == "win32":
        return False  # asking would end it
    try:
        os.kill(process, 0)
    except OSError:
        return False
    stat = Path(f"/proc/{process}/stat")
    state = stat.read_text(encoding="utf-8", errors="replace").rpartition(")")[2].split() if stat.is_file() else []
    return state[:1] != ["Z"]  # a child that nobody has reaped is no more
