"""The console of tables and bars: in colour only on a terminal, and quiet when nobody reads on."""

from typing import TextIO

from rich.console import Console

from optimizer.cli.console import to_nowhere

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
