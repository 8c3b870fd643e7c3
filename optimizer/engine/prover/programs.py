"""Programs: which rooms with which choices, in the order of what each must cost at least.

A floor adds up, for each room, the least of its choice over all places, and for each two rooms the least that they can
cost each other; order and what is between three rooms is left out.
"""

import heapq
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count
from typing import Final

from optimizer.engine.amounts import Amount
from optimizer.engine.explorer import Board
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Problem
from optimizer.engine.problem.modelled import Choices

MOST_OPEN: Final = 500_000
"""Begun programs that are kept at most; a wish list with more is not listed to its end."""


@dataclass(frozen=True, slots=True)
class Program:
    """A program and the cents that it costs at least."""

    floor: int
    choices: Choices


def programs(board: Board) -> Iterator[Program]:
    """Programs whose amounts can be kept, by rising floor. Of a wish list with too many the last one has no choices:
    its floor is that of all that were not listed.

    `board` is one of the problem as the model counts it.
    """
    listing = _Listing(board)
    order = count(1)
    heap: list[tuple[int, int, tuple[Option, ...]]] = [(listing.floor(()), 0, ())]
    while heap:
        floor, _, begun = heapq.heappop(heap)
        if len(heap) > MOST_OPEN:
            yield Program(floor, ())
            return
        if len(begun) == len(listing.options):
            yield Program(floor, tuple(choice for choice, _ in begun))
            continue
        for option in listing.options[len(begun)]:
            longer = (*begun, option)
            reached = listing.floor(longer)
            if reached < FORBIDDEN and listing.may_keep_amounts(longer):
                heapq.heappush(heap, (reached, next(order), longer))


Option = tuple[int, int]
"""A choice of a room (below 0: left out), and the variant that stands for what it uses."""


class _Listing:
    """What the choices of each room cost and use at least."""

    def __init__(self, board: Board) -> None:
        self.problem = problem = board.problem
        self.options = [_options(problem, room) for room in range(len(problem.rooms))]
        self._own = [
            {option[0]: _own(board, room, option[0]) for option in own} for room, own in enumerate(self.options)
        ]
        self._pairs = {
            (a, b): {
                (x, y): _between(board, a, x, b, y)
                for x, _ in self.options[a]
                for y, _ in self.options[b]
                if x >= 0 <= y
            }
            for a in range(len(problem.rooms))
            for b in range(a + 1, len(problem.rooms))
        }
        self._rest = [min(own.values(), default=FORBIDDEN) for own in self._own]

    def floor(self, begun: tuple[Option, ...]) -> int:
        """What a program costs at least of which the first rooms' choices are taken."""
        choices = [choice for choice, _ in begun]
        total = sum(self._own[room][choice] for room, choice in enumerate(choices))
        total += sum(self._rest[len(choices) :])
        for (a, b), table in self._pairs.items():
            if b < len(choices) and choices[a] >= 0 <= choices[b]:
                total += table[choices[a], choices[b]]
        return total

    def may_keep_amounts(self, begun: tuple[Option, ...]) -> bool:
        """Whether the other rooms can still make good what is needed, and leave what there is."""
        return all(self._may_keep(amount, begun) for amount in self.problem.amounts)

    def _may_keep(self, amount: Amount, begun: tuple[Option, ...]) -> bool:
        used = sum(amount.uses[room][v] for room, (choice, v) in enumerate(begun) if choice >= 0)
        least = most = used
        for room in range(len(begun), len(self.options)):
            low, high = amount.range_of(room)
            least += low if self.problem.rooms[room].required else 0
            most += high
        return most >= amount.least and (amount.most is None or least <= amount.most)


def _options(problem: Problem, room: int) -> list[Option]:
    data = problem.rooms[room]
    first = {variant.choice: v for v, variant in reversed(list(enumerate(data.variants)))}
    return sorted(first.items()) + ([] if data.required else [(-1, -1)])


def _own(board: Board, room: int, choice: int) -> int:
    """Least loss of a choice in any turn and place."""
    data = board.problem.rooms[room]
    if choice < 0:
        return data.absent_loss
    windows = [board.windows[room][v] for v, variant in enumerate(data.variants) if variant.choice == choice]
    return min((window.least for window in windows if window is not None), default=FORBIDDEN)


def _between(board: Board, a: int, x: int, b: int, y: int) -> int:
    """Least loss between two choices at any offset."""
    firsts, seconds = board.problem.rooms[a].variants, board.problem.rooms[b].variants
    return min(
        board.stamp(a, v, b, w).least
        for v, first in enumerate(firsts)
        if first.choice == x
        for w, second in enumerate(seconds)
        if second.choice == y
    )
