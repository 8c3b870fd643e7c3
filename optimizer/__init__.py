"""Concept options for outdoor rooms in a yard: placed by a solver, measured exactly, checked independently."""

from typing import Final

__version__: Final = "0.1.0"
