"""Work in a thread of its own: signals are heeded, and time passes on screen, in the main one only."""

import threading
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from pathlib import Path
from typing import Final, TypeVar

from optimizer.cli.exits import ExitStatus
from optimizer.cli.progress import Listener, listening
from optimizer.cli.signals import stop_on_signal
from optimizer.errors import InputError
from optimizer.events import Event

TICK_S: Final = 0.2
Done = TypeVar("Done")


def run_told(
    work: Callable[[Listener, threading.Event], Done],
    summary: Callable[[Done], dict[str, object]],
    *,
    scenario: Path,
    seconds: float,
    repeatable: bool,
    as_json: bool,
) -> Done:
    """Do the work of a command and tell of it, from `started` to `done`; a signal asks it to end."""
    stop = stop_on_signal()
    with listening(stop, as_json=as_json, seconds=None if repeatable else seconds) as listener:
        listener.hear(Event("started", {"scenario": str(scenario), "seconds": seconds}))
        outcome = _watched(lambda: work(listener, stop), listener)
        listener.hear(Event("done", summary(outcome)))
    return outcome


def _watched(work: Callable[[], Done], listener: Listener) -> Done:
    """Do the work and give what comes of it; what goes wrong is told to the listener, and raised again."""
    try:
        with ThreadPoolExecutor(max_workers=1) as pool:
            return _waited(pool.submit(work), listener)
    except InputError as error:
        for problem in error.problems:
            listener.hear(Event("problem", {"text": str(problem), "exit": int(ExitStatus.WRONG_INPUT)}))
        raise
    except Exception as error:
        listener.hear(Event("problem", {"text": f"a fault of the program: {error}", "exit": int(ExitStatus.FAULT)}))
        raise


def _waited(work: Future[Done], listener: Listener) -> Done:
    while not wait((work,), timeout=TICK_S).done:
        listener.tick()
    return work.result()
