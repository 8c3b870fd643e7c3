"""What is printed: plain text, and quiet when nobody reads on."""

import os
import sys
from collections.abc import Iterable
from typing import IO, TextIO


def printable(text: str) -> str:
    """Text without characters that would move a terminal's cursor or change its colours."""
    return "".join(glyph if glyph.isprintable() or glyph == "\n" else "\N{REPLACEMENT CHARACTER}" for glyph in text)


def say(text: str, *, file: TextIO | None = None) -> None:
    """Print a line of text, to standard output where no file is given; long lines stay whole."""
    out = file or sys.stdout
    try:
        print(printable(text), file=out)
    except BrokenPipeError:
        to_nowhere(out)


def say_pairs(pairs: Iterable[tuple[str, str]]) -> None:
    """Print labels and values in two columns."""
    rows = tuple(pairs)
    width = max((len(label) for label, _ in rows), default=0)
    for label, value in rows:
        say(f"{label:<{width}}  {value}")


def to_nowhere(file: IO[str]) -> None:
    """Let everything that is still written to a broken pipe vanish, also at the interpreter's end."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, file.fileno())
    os.close(nowhere)
