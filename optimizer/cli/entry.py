"""Where the command begins and ends: every way out is an exit status and, where needed, one clear message."""

import io
import os
import sys
import traceback
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import Final

from optimizer.cli.app import app
from optimizer.cli.console import say, to_nowhere
from optimizer.cli.exits import ExitStatus
from optimizer.errors import InputError

DETAILS_VARIABLE: Final = "OUTDOOR_ROOMS_DEBUG"
"""Names a file to which the details of a fault are added."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command on these arguments, or on the process's own, and return its exit status."""
    _show_what_can_be_shown()
    try:
        status = _run(sys.argv[1:] if arguments is None else list(arguments))
    except InputError as error:
        status = _tell_problems(error)
    except KeyboardInterrupt:
        status = ExitStatus.INTERRUPTED
    except Exception as error:  # noqa: BLE001 - no traceback reaches a user, whatever went wrong
        status = _tell_fault(error)
    _flush()
    return int(status)


def _show_what_can_be_shown() -> None:
    # A terminal may know fewer characters than a file's names have: those are escaped, which is no fault.
    for file in (sys.stdout, sys.stderr):
        if isinstance(file, io.TextIOWrapper):
            file.reconfigure(errors="backslashreplace")


def _run(arguments: list[str]) -> int:
    try:
        app(arguments, prog_name="outdoor-rooms")
    except SystemExit as end:  # typer ends every call so, also one that went well
        return end.code if isinstance(end.code, int) else int(end.code is not None)
    return ExitStatus.DONE


def _tell_problems(error: InputError) -> ExitStatus:
    for problem in error.problems:
        say(str(problem), file=sys.stderr)
    return ExitStatus.WRONG_INPUT


def _tell_fault(error: Exception) -> ExitStatus:
    words = f"{type(error).__name__}: {error}".splitlines()[0][:300]
    say(f"A fault of the program, not of your files: {words}", file=sys.stderr)
    details = os.environ.get(DETAILS_VARIABLE)
    if details and _kept(details, error):
        say(f"Details were added to {details}: send them with your report.", file=sys.stderr)
    else:
        say(
            "Please report it to the project, with the command as typed and the scenario file. "
            f"Set {DETAILS_VARIABLE} to a file's name and repeat the command to get details for the report.",
            file=sys.stderr,
        )
    return ExitStatus.FAULT


def _kept(details: str, error: Exception) -> bool:
    """Whether the traceback could be added to the file."""
    try:
        with Path(details).open("a", encoding="utf-8", errors="backslashreplace") as file:
            file.writelines(traceback.format_exception(error))
    except OSError:
        return False
    return True


def _flush() -> None:
    for file in (sys.stdout, sys.stderr):
        try:
            file.flush()
        except BrokenPipeError:
            to_nowhere(file)
        except (OSError, ValueError):
            # A full disk or a closed file: nothing is left to tell it to.
            with suppress(OSError, ValueError):
                to_nowhere(file)
