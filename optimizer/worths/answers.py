"""An answer about two things, and what it asks of their worths."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import log
from typing import Final, Literal

How = Literal["much_one", "one", "same", "other", "much_other"]
HOWS: Final[tuple[How, ...]] = ("much_one", "one", "same", "other", "much_other")
RATHER: Final = 1.3
"""Who would rather have one thing than another values it at least so many times as much: our convention, no source."""
MUCH_RATHER: Final = 2.0
SAME: Final = 1.2
"""Of two things that are missed about the same, neither is worth more than so many times the other. Twice the same may
come to what is rather wanted.
"""
ROUNDING: Final = 0.012
"""Worths are written with three digits: two of them together may be off by so much, as a logarithm."""


@dataclass(frozen=True, slots=True)
class Answer:
    """Which of two things, by name, would be missed more, and how much more."""

    one: str
    other: str
    how: How

    @property
    def pair(self) -> frozenset[str]:
        """The two things, whichever was named first."""
        return frozenset((self.one, self.other))

    @property
    def asks(self) -> tuple["Ask", ...]:
        """What it asks of the worths."""
        if self.how == "same":
            bound = ROUNDING - log(SAME)
            return (Ask(self.one, self.other, bound, self), Ask(self.other, self.one, bound, self))
        more, less = (self.one, self.other) if self.how in {"one", "much_one"} else (self.other, self.one)
        ratio = MUCH_RATHER if self.how.startswith("much") else RATHER
        return (Ask(more, less, log(ratio) + ROUNDING, self),)


@dataclass(frozen=True, slots=True)
class Ask:
    """The logarithm of the worth of `more` lies at least `least` above that of `less`.

    `answer` says so; None where the file does, of two sizes of one room.
    """

    more: str
    less: str
    least: float
    answer: Answer | None = None


def without(answers: Iterable[Answer], pair: frozenset[str]) -> tuple[Answer, ...]:
    """All answers but that about a pair."""
    return tuple(answer for answer in answers if answer.pair != pair)
