"""Processes beside this one, so that all cores work: fresh ones, since a copy would hold this one's locks."""

import multiprocessing
import os
import signal
import threading
import time
from typing import Final

CONTEXT: Final = multiprocessing.get_context("spawn")
_PARENT_ASKED_EVERY_S = 1.0


def mind_parent(parent: int) -> None:
    """Make a process ready: who interrupts the program is answered by its parent, and without it there is no work."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_leave_with, args=(parent,), daemon=True).start()


def _leave_with(parent: int) -> None:
    while os.getppid() == parent:
        time.sleep(_PARENT_ASKED_EVERY_S)
    os._exit(0)
