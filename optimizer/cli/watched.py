"""Work in a thread of its own: signals are heeded, and time passes on screen, in the main one only."""

from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from typing import Final, TypeVar

from optimizer.cli.exits import ExitStatus
from optimizer.cli.progress import Listener
from optimizer.errors import InputError
from optimizer.events import Event

TICK_S: Final = 0.2
Done = TypeVar("Done")


def watched(work: Callable[[], Done], listener: Listener) -> Done:
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
