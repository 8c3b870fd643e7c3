"""The command line."""

from optimizer.cli.entry import main

__all__ = ["main"]
