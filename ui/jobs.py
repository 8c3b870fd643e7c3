"""Searches that the page has started: each a child process of the same command that a person would type.

The table belongs to the server, not to a session: a tab that comes back, or a second one, finds its search by id.
What a search writes lies in a folder of its own until it is kept; nothing here knows the page or what is kept.
"""

import json
import secrets
import subprocess
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock, Thread
from time import monotonic
from typing import Any, Final

from ui.search_kind import SearchKind

MOST_RUNNING: Final = 2
"""Searches at a time: each takes all processors."""
RESULT_NAMES: Final[dict[SearchKind, str]] = {
    "options": "options.json",
    "budgets": "budgets.json",
    "why": "why.json",
    "improve": "improve.json",
}
SO_FAR: Final = "so-far.json"
"""The best so far, as the command writes it while it goes on."""
_Ended = Callable[["Job"], None]
_SCENARIO_NAME: Final = "scenario.yaml"
_START_NAME: Final = "start.json"
_PRICES_NAME: Final = "prices.csv"
_MESSAGES_NAME: Final = "messages.txt"
_OUT_NAME: Final = "out"
_NOTHING_SAID: Final = "nothing; search again, and report it if that happens twice"


class BusyError(Exception):
    """The server runs as many searches as it may."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What a search is asked: its kind, the scenario's text, the time [s], the result to go on from, further words of
    the command, and a price file.
    """

    kind: SearchKind
    text: str
    seconds: float
    start_from: bytes | None = None
    further: tuple[str, ...] = ()
    prices: str | None = None


@dataclass(slots=True)
class Job:
    """One search: its child process, the folder it writes to, and the events it has printed so far."""

    id: str
    asked: Asked
    folder: Path
    process: subprocess.Popen[str]
    events: list[dict[str, Any]] = field(default_factory=list)
    stop_asked: bool = False
    ended_at: float | None = None

    @property
    def is_running(self) -> bool:
        """Whether the child still works or its last lines are still being read."""
        return self.ended_at is None

    @property
    def said(self) -> tuple[str, ...]:
        """What it said when it failed: its problems, else the last lines for a person."""
        problems = tuple(str(event["text"]) for event in self.events if event.get("event") == "problem")
        return problems or messages_in(self.folder)

    def stop(self) -> None:
        """Ask the search to end; it keeps its best so far."""
        if self.is_running and not self.stop_asked:
            self.stop_asked = True
            self.process.terminate()

    def follow(self, ended: _Ended) -> None:
        """Read events until the child closes its output, then reap it and hand on what it wrote."""
        with self.process:
            for event in _events(self.process.stdout or ()):
                self.events.append(event)
        try:
            ended(self)
        finally:
            self.ended_at = monotonic()


def files_in(folder: Path) -> dict[str, bytes]:
    """All files that a search has written whole into its folder."""
    out = folder / _OUT_NAME
    found = sorted(out.iterdir()) if out.is_dir() else []
    return {path.name: path.read_bytes() for path in found if path.is_file() and not path.name.startswith(".")}


def so_far_in(folder: Path) -> bytes | None:
    """Best so far of a search in this folder, while there is one: the folder goes when the search has ended."""
    try:
        return (folder / _OUT_NAME / SO_FAR).read_bytes()
    except FileNotFoundError:
        return None


def messages_in(folder: Path) -> tuple[str, ...]:
    """What the command said to a person, its last lines."""
    path = folder / _MESSAGES_NAME
    text = path.read_text(encoding="utf-8", errors="replace").strip() if path.is_file() else ""
    return tuple(text.splitlines()[-5:]) or (_NOTHING_SAID,)


def _events(lines: Iterable[str]) -> Iterator[dict[str, Any]]:
    for line in lines:
        try:
            event = json.loads(line)
        except ValueError:
            continue
        if isinstance(event, dict):
            yield event


def search_command(
    kind: SearchKind,
    scenario: Path,
    folder: Path,
    seconds: float,
    start_from: Path | None = None,
    further: Sequence[str] = (),
) -> Sequence[str]:
    """Return the command that a person would type for the same search."""
    out = ("--json", str(folder / RESULT_NAMES[kind])) if kind == "why" else ("--out", str(folder))
    call = (kind, str(scenario), *out, "--seconds", f"{seconds:g}", "--progress", "json")
    # A sketch is improved from where it is drawn, whatever was found before.
    start = () if start_from is None or kind == "improve" else ("--from", str(start_from))
    return (sys.executable, "-m", "optimizer", *call, *start, *further)


class JobTable:
    """All searches that this server has started, by id. Each writes into a folder of its own in `home`.

    `ended` is called once in a thread of its own when a search has ended, before it counts as ended: what is worth
    keeping in its folder is to be taken then.
    """

    def __init__(self, home: Path, ended: _Ended) -> None:
        self._home, self._ended = home, ended
        self._jobs: dict[str, Job] = {}
        self._lock = Lock()

    @property
    def jobs(self) -> tuple[Job, ...]:
        """Searches of this server: those that run, and those that have ended since the last one began."""
        return tuple(self._jobs.values())

    def get(self, job_id: str | None) -> Job | None:
        """Return the search of that id, or None where this server has not started it."""
        return self._jobs.get(job_id or "")

    def start(self, asked: Asked, begun: Callable[[Job], None]) -> Job:
        """Start a search; `begun` is called before anything of it is followed, and where it fails the search is ended.

        Raises
        ------
        BusyError
            If as many searches run as this server may run.
        """
        with self._lock:
            self._jobs = {job.id: job for job in self.jobs if job.is_running}
            if len(self._jobs) >= MOST_RUNNING:
                raise BusyError
            job = self._launch(asked)
            self._jobs[job.id] = job
        try:
            begun(job)
        except BaseException:
            job.process.kill()
            raise
        finally:
            Thread(target=job.follow, args=(self._ended,), daemon=True).start()
        return job

    def _launch(self, asked: Asked) -> Job:
        job_id = secrets.token_urlsafe(9)
        folder = self._home / job_id
        folder.mkdir(parents=True)
        scenario, start = folder / _SCENARIO_NAME, folder / _START_NAME
        scenario.write_text(asked.text, encoding="utf-8")
        if asked.start_from is not None:
            start.write_bytes(asked.start_from)
        begin = start if asked.start_from is not None else None
        further = asked.further
        if asked.prices is not None:
            (folder / _PRICES_NAME).write_text(asked.prices, encoding="utf-8")
            further = (*further, "--prices", str(folder / _PRICES_NAME))
        command = search_command(asked.kind, scenario, folder / _OUT_NAME, asked.seconds, begin, further)
        with (folder / _MESSAGES_NAME).open("w", encoding="utf-8") as messages:
            process = subprocess.Popen(  # noqa: S603 - our own command, no shell, no words from the page
                command, stdout=subprocess.PIPE, stderr=messages, text=True
            )
        return Job(id=job_id, asked=asked, folder=folder, process=process)
