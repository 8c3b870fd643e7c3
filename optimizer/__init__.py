"""Concept options for outdoor rooms in a yard: placed by a solver, measured exactly, checked independently."""

__version__ = "0.1.0"
