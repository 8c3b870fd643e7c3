"""Processes beside this one, so that all cores work: fresh ones, since a copy would hold this one's locks.

Where the system can, they are copies of one fresh process that has read the libraries and does nothing else, so that
these are read once, however many processes there are.
"""

import multiprocessing
import os
import signal
import threading
from multiprocessing import connection, forkserver
from typing import Final

CONTEXT: Final = (
    multiprocessing.get_context("forkserver")
    if "forkserver" in multiprocessing.get_all_start_methods()
    else multiprocessing.get_context("spawn")
)
CONTEXT.set_forkserver_preload(["optimizer.concepts.workers", "optimizer.concepts.whole"])


def get_ready() -> None:
    """Begin that fresh process now: it reads the libraries while this one reads the yard."""
    if CONTEXT.get_start_method() == "forkserver":
        forkserver.ensure_running()


def mind_parent() -> None:
    """Make a process ready: who interrupts the program is answered by its parent, and without it there is no work."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_leave_with_parent, daemon=True).start()


def _leave_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        connection.wait([parent.sentinel])
        os._exit(0)
