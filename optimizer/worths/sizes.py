"""What the file says of the sizes of one room: a larger one stays worth more, and how worths are measured."""

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from math import log
from typing import Final

from optimizer.worths.answers import Ask
from optimizer.worths.things import Thing

STEP: Final = 1.05
"""A larger size stays worth so many times the next smaller one, or what it is worth today if that is less."""
_LEAST_SHARE: Final = 0.05
"""What the file calls worth nothing begins at this share of what is worth most: nothing is so many times nothing."""


def logs_of(things: Sequence[Thing]) -> list[float]:
    """Logarithms of what things are worth today."""
    most = max((thing.worth for thing in things), default=0.0) or 1.0
    return [log(max(thing.worth, _LEAST_SHARE * most)) for thing in things]


def asks_of_sizes(things: Sequence[Thing]) -> Iterator[Ask]:
    """What holds between any two sizes of one room."""
    worths = logs_of(things)
    steps = [min(log(STEP), after - before) for before, after in pairwise(worths)]
    for less, more in combinations(range(len(things)), 2):
        if things[less].room == things[more].room:
            yield Ask(things[more].name, things[less].name, sum(steps[less:more]))
