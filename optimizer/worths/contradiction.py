"""Answers that cannot hold together: the fewest of them, in the order in which each leads to the next.

Every answer says how far one worth lies above another at the least, so answers contradict each other exactly where they
go round in a circle and come back higher than they began. Of circles with the fewest answers none can do without one.
Source: systems of difference constraints, Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 24.4.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from optimizer.worths.answers import Answer, Ask
from optimizer.worths.sizes import asks_of_sizes
from optimizer.worths.things import Thing

_TINY: Final = 1e-9
Walk = tuple[float, tuple[Ask, ...]]
"""How far above the end of a walk its start lies at the least, and by which asks."""


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Asks that go round in a circle: each begins where the one before ends."""

    asks: tuple[Ask, ...]

    @property
    def answers(self) -> tuple[Answer, ...]:
        """Answers of the circle: all but one of them can hold together."""
        return tuple(ask.answer for ask in self.asks if ask.answer is not None)

    @property
    def words(self) -> str:
        """The circle as one sentence."""
        said = [_words(ask) for ask in self.asks]
        *first, last = said
        return f"You said {'; '.join(first)}; but then {last}." if first else f"You said {last}."


def contradiction(things: Sequence[Thing], answers: Sequence[Answer]) -> Contradiction | None:
    """The fewest answers that cannot hold together, or None where all can."""
    sizes = tuple(asks_of_sizes(things))
    asks = tuple(ask for answer in known(things, answers) for ask in answer.asks)
    # Each circle is gone round from one of its answers, so that an order of sizes comes after one.
    walks: dict[str, dict[str, Walk]] = {ask.more: {ask.more: (0.0, ())} for ask in asks}
    for _ in answers:
        for start, walk in walks.items():
            walks[start] = _through(_stepped(walk, asks), sizes)
            gain, circle = walks[start].get(start, (0.0, ()))
            if gain > _TINY:
                return Contradiction(circle)
    return None


def known(things: Sequence[Thing], answers: Iterable[Answer]) -> tuple[Answer, ...]:
    """Answers about things that there are: a size that the file no longer has asks for nothing."""
    names = {thing.name for thing in things}
    return tuple(answer for answer in answers if answer.pair <= names)


def _stepped(walks: dict[str, Walk], asks: Sequence[Ask]) -> dict[str, Walk]:
    """Walks that go one ask further, the highest to each end."""
    further: dict[str, Walk] = {}
    for ask in asks:
        if ask.more in walks:
            gain, path = walks[ask.more]
            if ask.less not in further or further[ask.less][0] < gain + ask.least:
                further[ask.less] = (gain + ask.least, (*path, ask))
    return further


def _through(walks: dict[str, Walk], sizes: Sequence[Ask]) -> dict[str, Walk]:
    """The same walks, and those that go on from a larger size to a smaller one of its room."""
    down = _stepped(walks, sizes)
    return down | {end: walk for end, walk in walks.items() if end not in down or walk[0] >= down[end][0]}


def _words(ask: Ask) -> str:
    if ask.answer is None:
        return f"{ask.more} is worth no less than {ask.less}, as your file has it"
    if ask.answer.how == "same":
        return f"{ask.more} and {ask.less} are about the same"
    much = "much " if ask.answer.how.startswith("much") else ""
    return f"{much}rather {ask.more} than {ask.less}"
