"""Exit statuses: part of the contract, read by scripts and by the page."""

from enum import IntEnum


class ExitStatus(IntEnum):
    """What an exit status of the command means; one of its own, 130, is the shell's for a key that ended it."""

    DONE = 0
    FAULT = 1
    WRONG_INPUT = 2
    NOTHING_FITS = 3
    UNDECIDED = 4
    DIFFERS = 5
    INTERRUPTED = 130
