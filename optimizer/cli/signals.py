"""Ctrl-C and its kin: they ask for an end, and never end anything themselves."""

import signal
import threading
from typing import Final

_ENDING: Final = ("SIGINT", "SIGTERM", "SIGHUP")


def stop_on_signal() -> threading.Event:
    """Event that is set when the process is asked to end, the first time and every time after.

    The handlers stay for the rest of the process: a third Ctrl-C must not kill the writing, nor spoil the exit status.
    To be called from the main thread.
    """
    stop = threading.Event()
    for name in _ENDING:
        number = getattr(signal, name, None)  # Windows knows no SIGHUP
        # A hang-up that is ignored was meant to be: the run shall outlive its terminal.
        if number is not None and not (name == "SIGHUP" and signal.getsignal(number) is signal.SIG_IGN):
            signal.signal(number, lambda *_: stop.set())
    return stop
