"""What is printed: plain text, in colour only on a terminal, and quiet when nobody reads on."""

import os
import sys
from collections.abc import Iterable
from typing import IO, TextIO

from rich.console import Console
from rich.text import Text

PLAIN_WIDTH = 160
"""Columns where the output is no terminal and wraps nothing."""


class QuietConsole(Console):
    """Console for which a reader who has left is no error: the work and its exit status go on."""

    def on_broken_pipe(self) -> None:
        """Write the rest to nowhere."""
        to_nowhere(self.file)


def console_on(file: TextIO) -> QuietConsole:
    """Console on standard output or standard error."""
    width = None if file.isatty() else PLAIN_WIDTH
    return QuietConsole(file=file, width=width, markup=False, highlight=False, emoji=False, soft_wrap=False)


def printable(text: str) -> str:
    """Text without characters that would move a terminal's cursor or change its colours."""
    return "".join(glyph if glyph.isprintable() or glyph == "\n" else "\N{REPLACEMENT CHARACTER}" for glyph in text)


def say(text: str, *, file: TextIO | None = None) -> None:
    """Print a line of text, to standard output where no file is given; long lines stay whole."""
    console_on(file or sys.stdout).print(Text(printable(text)), soft_wrap=True)


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
