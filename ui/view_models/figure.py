"""A measure in words."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Figure:
    """A measure with its value in words, and what it means."""

    label: str
    value: str
    meaning: str = ""
