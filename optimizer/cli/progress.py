"""Listeners of a run: JSON lines for a program, a bar for a person, lines for a log."""

import json
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, Final, Protocol, TextIO

from rich.progress import BarColumn, Progress, SpinnerColumn, TextColumn, TimeElapsedColumn

from optimizer.cli.console import printable, say, to_nowhere
from optimizer.cli.rich_console import console_on
from optimizer.events import Event

SILENCE_S: Final = 0.7
"""How long nothing may be said before a sign of life; lines come at least every second, and ticks take their time."""


class Listener(Protocol):
    """Somebody who is told of events, from any thread, and ticked a few times a second."""

    def hear(self, event: Event) -> None:
        """Take one event."""

    def tick(self) -> None:
        """Take note that time has passed."""


class JsonLines:
    """Prints one JSON object a line, flushed; a reader who leaves asks the run to end."""

    def __init__(self, file: TextIO, stop: threading.Event) -> None:
        self._file = file
        self._stop = stop
        self._lock = threading.Lock()
        self._start_s = self._last_s = time.monotonic()

    def hear(self, event: Event) -> None:
        """Print an event."""
        with self._lock:
            self._last_s = time.monotonic()
            line = {"event": event.kind, "elapsed_s": round(self._last_s - self._start_s, 3), **event.facts}
            try:
                self._file.write(json.dumps(line, default=str) + "\n")
                self._file.flush()
            except BrokenPipeError:
                self._stop.set()
                to_nowhere(self._file)

    def tick(self) -> None:
        """Print that the run is alive, where nothing else was said."""
        if time.monotonic() - self._last_s >= SILENCE_S:
            self.hear(Event("alive"))


class LogLines:
    """Prints a line for each new stage: what a log or a pipe can hold of a bar."""

    def hear(self, event: Event) -> None:
        """Print a stage."""
        if event.kind == "stage":
            say(f"{event.facts.get('stage', '')} ...", file=sys.stderr)

    def tick(self) -> None:
        """Say nothing."""


class Bar:
    """Shows the stage, the time, the concepts found and the best so far on one line of a terminal."""

    def __init__(self, progress: Progress, seconds: float | None) -> None:
        self._progress = progress
        self._lock = threading.Lock()
        self._start_s = time.monotonic()
        self._facts: dict[str, Any] = {"found": 0, "best": "-"}
        self._task = progress.add_task("Starting", total=seconds, **self._facts)

    def hear(self, event: Event) -> None:
        """Show what an event tells."""
        with self._lock:
            self._facts |= {key: printable(str(event.facts[key])) for key in self._facts if key in event.facts}
            stage = event.facts.get("stage")
            self._progress.update(self._task, description=stage and printable(str(stage)), **self._facts)

    def tick(self) -> None:
        """Move the bar with the time."""
        self._progress.update(self._task, completed=time.monotonic() - self._start_s)


@contextmanager
def listening(stop: threading.Event, *, as_json: bool, seconds: float | None) -> Iterator[Listener]:
    """Give the listener that fits where the output goes; `seconds` is the time allowed, None for no limit."""
    if as_json:
        yield JsonLines(sys.stdout, stop)
    elif not sys.stderr.isatty():
        yield LogLines()
    else:
        with _progress() as progress:
            yield Bar(progress, seconds)


def _progress() -> Progress:
    words = TextColumn("{task.fields[found]} concepts, best {task.fields[best]}", markup=False)
    stage = TextColumn("{task.description}", markup=False)
    columns = (SpinnerColumn(), stage, BarColumn(bar_width=20), TimeElapsedColumn(), words)
    return Progress(*columns, console=console_on(sys.stderr), transient=True)
