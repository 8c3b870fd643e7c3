"""How far a proof looks: near at first, and farther each time that nothing is left within what it looks at.

Below a near limit few places are open, and a model that asks for less than the best possible is refuted soon. One that
asks for a little less than some layout a fifth above the best is not: that is where proofs took most of their time.
"""

from dataclasses import dataclass
from typing import Final

from optimizer.engine.pairs import FORBIDDEN

FIRST: Final = 0.01
"""The first horizon lies so much beyond the least that anything can cost."""
GROWTH: Final = 1.3
"""While nothing much is open the distance grows so much each time."""
STEP: Final = 0.01
"""Afterwards each horizon lies so much beyond the last one."""
DEAR: Final = 4
"""So many models asked within one horizon, or more, are much."""
NEAR: Final = 1.08
"""Where the best known layout is at most so many times as far, all that is below it is looked at next, once."""
MOST: Final = 40
"""After so many horizons all is looked at: where nothing fits, no horizon is far enough."""


@dataclass(frozen=True, slots=True)
class Horizon:
    """Only what costs less than the limit is looked at [cents]; `root` is the least that anything can cost."""

    root: int
    limit: int
    number: int = 1

    @classmethod
    def of(cls, root: int) -> "Horizon":
        """The first one."""
        return cls(root, root + max(1, round(FIRST * root)))

    @classmethod
    def all_of(cls, root: int) -> "Horizon":
        """One beyond which nothing lies."""
        return cls(root, FORBIDDEN)

    @property
    def is_all(self) -> bool:
        """Whether nothing lies beyond."""
        return self.limit >= FORBIDDEN

    def is_near(self, best: int) -> bool:
        """Whether the best that is known lies near enough for all below it to be looked at."""
        return best <= NEAR * self.limit

    def beyond(self, least: int, asked: int, best: int) -> "Horizon":
        """The next one, once `asked` models were refuted within this one; it lies beyond the least of what is open, and
        beyond all where the best that is known is near.
        """
        step = round(STEP * self.limit)
        if asked < DEAR:
            step = max(step, round((GROWTH - 1) * (self.limit - self.root)))
        if self.number >= MOST or self.is_near(best):
            return Horizon.all_of(self.root)
        return Horizon(self.root, max(self.limit + step, least + 1), self.number + 1)
