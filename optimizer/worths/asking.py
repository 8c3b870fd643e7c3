"""What follows from the answers for pairs that were not asked about, and which pair to ask about next."""

from collections.abc import Sequence
from itertools import combinations
from math import log
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.worths.answers import SAME, Answer
from optimizer.worths.contradiction import known
from optimizer.worths.fit import fitted
from optimizer.worths.sizes import asks_of_sizes, logs_of
from optimizer.worths.things import Thing

CLOSE: Final = 4 * log(SAME)
"""Two worths whose ratio is known to so much, as a logarithm, need no further question."""


def least_above(things: Sequence[Thing], answers: Sequence[Answer]) -> NDArray[np.float64]:
    """Least by which each thing's worth lies above each other's, as a logarithm; -inf where nothing follows.

    For answers that can hold together; the longest way from one to the other (Floyd and Warshall).
    """
    at = {thing.name: number for number, thing in enumerate(things)}
    least = np.full((len(at), len(at)), -np.inf)
    np.fill_diagonal(least, 0.0)
    asks = [ask for answer in known(things, answers) for ask in answer.asks]
    for ask in (*asks, *asks_of_sizes(things)):
        one, other = at[ask.more], at[ask.less]
        least[one, other] = max(least[one, other], ask.least)
    for middle in range(len(at)):
        least = np.maximum(least, least[:, middle, None] + least[None, middle, :])
    return least


def decided(things: Sequence[Thing], answers: Sequence[Answer]) -> tuple[int, int]:
    """How many pairs of things of two rooms the answers decide, asked or not, and how many pairs there are."""
    least = least_above(things, answers)
    pairs = _pairs(things)
    return sum(not _is_open(least, pair) for pair in pairs), len(pairs)


def most_useful(things: Sequence[Thing], answers: Sequence[Answer]) -> tuple[Thing, Thing] | None:
    """The pair of which least is known; of several the one whose worths lie nearest, and of these what is worth most.
    None where all is decided.

    Neighbours in worth first: if they stand as the file has them, the order of all others follows from few answers.
    """
    worths = fitted(things, answers)
    if worths is None:
        return None
    least, logs = least_above(things, answers), logs_of(things)
    open_pairs = [pair for pair in _pairs(things) if _is_open(least, pair)]
    if not open_pairs:
        return None
    logs = [log(worth) if worth > 0 else low for worth, low in zip(worths, logs, strict=True)]

    def usefulness(pair: tuple[int, int]) -> tuple[float, float, float]:
        one, other = (logs[number] for number in pair)
        return _width(least, pair), -round(abs(one - other), 6), one + other

    one, other = max(open_pairs, key=usefulness)
    return things[one], things[other]


def _pairs(things: Sequence[Thing]) -> list[tuple[int, int]]:
    return [pair for pair in combinations(range(len(things)), 2) if things[pair[0]].room != things[pair[1]].room]


def _width(least: NDArray[np.float64], pair: tuple[int, int]) -> float:
    """How much is unknown of the ratio of two worths, as a logarithm; inf where it has no end."""
    one, other = pair
    return float(-least[other, one] - least[one, other])


def _is_open(least: NDArray[np.float64], pair: tuple[int, int]) -> bool:
    one, other = pair
    return bool(least[one, other] <= 0 and least[other, one] <= 0 and _width(least, pair) > CLOSE)
