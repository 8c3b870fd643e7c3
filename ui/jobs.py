"""Searches that the page has started: each a child process of the same command that a person would type.

The table belongs to the server, not to a session: a tab that comes back, or a second one, finds its search by id.
Nothing here knows the page.
"""

import atexit
import json
import secrets
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock, Thread
from time import monotonic
from typing import Any, Final, Literal

MOST_RUNNING: Final = 2
"""Searches at a time: each takes all processors."""
KEPT_S: Final = 6 * 3600.0
"""How long a finished search and its files are kept [s]."""
Kind = Literal["options", "budgets"]
RESULT_NAMES: Final[dict[Kind, str]] = {"options": "options.json", "budgets": "budgets.json"}
_Command = Callable[[Path, Path], Sequence[str]]
"""From the scenario's file and the folder to write to: what a person would type."""
_SCENARIO_NAME: Final = "scenario.yaml"
_MESSAGES_NAME: Final = "messages.txt"
_NOTHING_SAID: Final = "nothing; search again, and report it if that happens twice"


class BusyError(Exception):
    """The server runs as many searches as it may."""


@dataclass(slots=True)
class Job:
    """One search: its child process, the folder it writes to, and the events it has printed so far."""

    id: str
    seconds: float
    folder: Path
    process: subprocess.Popen[str]
    kind: Kind = "options"
    events: list[dict[str, Any]] = field(default_factory=list)
    stop_asked: bool = False
    ended_at: float | None = None

    @property
    def is_running(self) -> bool:
        """Whether the child still works or its last lines are still being read."""
        return self.ended_at is None

    @property
    def result_path(self) -> Path:
        """Where the result is, once there is one."""
        return self.folder / RESULT_NAMES[self.kind]

    @property
    def messages(self) -> str:
        """What the command said to a person, for when it leaves no result."""
        return (self.folder / _MESSAGES_NAME).read_text(encoding="utf-8", errors="replace").strip()

    @property
    def said(self) -> tuple[str, ...]:
        """What it said when it failed: its problems, else the last lines for a person."""
        problems = tuple(str(event["text"]) for event in self.events if event.get("event") == "problem")
        return problems or tuple(self.messages.splitlines()[-5:]) or (_NOTHING_SAID,)

    def plan_svg(self, concept_id: str) -> str | None:
        """Return the plan of a concept as the command wrote it, or None where there is none."""
        path = self.folder / f"{concept_id}.svg"
        is_ours = path.parent == self.folder and path.is_file()
        return path.read_text(encoding="utf-8") if is_ours else None

    def stop(self) -> None:
        """Ask the search to end; it keeps its best so far."""
        if self.is_running and not self.stop_asked:
            self.stop_asked = True
            self.process.terminate()

    def follow(self) -> None:
        """Read events until the child closes its output, then reap it."""
        with self.process:
            for event in _events(self.process.stdout or ()):
                self.events.append(event)
        self.ended_at = monotonic()


def _events(lines: Iterable[str]) -> Iterator[dict[str, Any]]:
    for line in lines:
        try:
            event = json.loads(line)
        except ValueError:
            continue
        if isinstance(event, dict):
            yield event


def options_command(scenario: Path, folder: Path, seconds: float) -> Sequence[str]:
    """Return the command that a person would type for the same search."""
    call = ("options", str(scenario), "--out", str(folder), "--seconds", f"{seconds:g}", "--progress", "json")
    return (sys.executable, "-m", "optimizer", *call)


def budgets_command(scenario: Path, folder: Path, seconds: float, start_from: Path) -> Sequence[str]:
    """Return the command that a person would type to find what each budget buys, from the concepts found."""
    call = ("budgets", str(scenario), "--out", str(folder), "--seconds", f"{seconds:g}", "--from", str(start_from))
    return (sys.executable, "-m", "optimizer", *call, "--progress", "json")


class JobTable:
    """All searches of this server by id; their files go when the server does."""

    def __init__(self) -> None:
        self._home = tempfile.mkdtemp(prefix="outdoor-rooms-")
        atexit.register(shutil.rmtree, self._home, ignore_errors=True)
        self._jobs: dict[str, Job] = {}
        self._lock = Lock()

    @property
    def jobs(self) -> tuple[Job, ...]:
        """All searches that are kept."""
        return tuple(self._jobs.values())

    def get(self, job_id: str | None) -> Job | None:
        """Return the search of that id, or None where it is unknown or no longer kept."""
        return self._jobs.get(job_id or "")

    def start(self, scenario_text: str, *, seconds: float) -> Job:
        """Start a search on a scenario's text.

        Raises
        ------
        BusyError
            If as many searches run as this server may run.
        """
        return self._started(
            "options", scenario_text, seconds, lambda scenario, folder: options_command(scenario, folder, seconds)
        )

    def start_budgets(self, of: Job, *, seconds: float) -> Job:
        """Start to find what each budget buys in the yard of a search, from the concepts that it found.

        Raises
        ------
        BusyError
            If as many searches run as this server may run.
        """
        text = (of.folder / _SCENARIO_NAME).read_text(encoding="utf-8")
        return self._started(
            "budgets",
            text,
            seconds,
            lambda scenario, folder: budgets_command(scenario, folder, seconds, of.result_path),
        )

    def _started(self, kind: Kind, text: str, seconds: float, command: _Command) -> Job:
        with self._lock:
            self._forget_old()
            if sum(job.is_running for job in self.jobs) >= MOST_RUNNING:
                raise BusyError
            job = self._launch(kind, text, seconds, command)
            self._jobs[job.id] = job
        Thread(target=job.follow, daemon=True).start()
        return job

    def _launch(self, kind: Kind, text: str, seconds: float, command: _Command) -> Job:
        folder = Path(tempfile.mkdtemp(dir=self._home))
        scenario = folder / _SCENARIO_NAME
        scenario.write_text(text, encoding="utf-8")
        with (folder / _MESSAGES_NAME).open("w", encoding="utf-8") as messages:
            process = subprocess.Popen(  # noqa: S603 - our own command, no shell, no words from the page
                command(scenario, folder), stdout=subprocess.PIPE, stderr=messages, text=True
            )
        return Job(id=secrets.token_urlsafe(9), seconds=seconds, folder=folder, process=process, kind=kind)

    def _forget_old(self) -> None:
        now = monotonic()
        for job in [job for job in self.jobs if job.ended_at is not None and now - job.ended_at > KEPT_S]:
            del self._jobs[job.id]
            shutil.rmtree(job.folder, ignore_errors=True)
