"""Which concepts lead, whatever their score: every wished room first, and one wish fewer after it."""

from collections.abc import Sequence
from typing import Final

NEAR_BEST: Final = 1.1
"""A concept leads while its score is at most so many times the best one."""


def leading(scores: Sequence[float], lacking: Sequence[int]) -> tuple[int, ...]:
    """Places in the sequences of the concepts that come first; none where nothing near the best has every room.

    `lacking` counts the wished rooms that each does without. The first has them all; the second does without one, for
    which the others can be done properly. All others follow by their score.
    """
    by_score = sorted(range(len(scores)), key=lambda n: scores[n])
    near = [n for n in by_score if scores[n] <= NEAR_BEST * scores[by_score[0]]]
    of_each = (next((n for n in near if lacking[n] == count), None) for count in (0, 1))
    first, second = of_each
    if first is None:
        return ()
    return (first,) if second is None else (first, second)
