"""From much that cannot be kept together to a part of it from which nothing can be left out."""

from collections.abc import Callable, Sequence
from typing import TypeVar

One = TypeVar("One")


def smallest(members: Sequence[One], cannot: Callable[[Sequence[One]], bool]) -> tuple[One, ...]:
    """A part of the members that cannot be kept together, and can without any one of its own.

    `cannot` says whether so much cannot be kept together; all of the members cannot, and more never can where less
    cannot. Members at the end are let go first, many at a time, then one by one.
    """
    kept, size = tuple(members), max(1, len(members) // 2)
    while True:
        end = len(kept)
        while end > 0:
            start = max(0, end - size)
            fewer = (*kept[:start], *kept[end:])
            if cannot(fewer):
                kept = fewer
            end = start
        if size == 1:
            return kept
        size = max(1, size // 3)
