"""Dives: better layouts are looked for beyond the horizon, where the tables promise most.

The horizon itself meets a layout only once it has come as far as the best one. Until then the gap would speak of what
others have found, who count more than the model does. A block of the least floors, or all places of a program, has a
layout within some percents of the best, by measurement in about a second.
"""

from collections.abc import Sequence
from typing import Final

from optimizer.engine.problem import Problem
from optimizer.engine.prover.blocks import SIDES, Block, blocks_of, scope_of
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.programs import Program

PROGRAMS: Final = 3
"""So many programs, those of the least floors."""
WIDE: Final = 10**6
"""The side of a block of all places."""
EVERY: Final = 6
"""One for so many blocks of the proof."""
REACH: Final = 1.1
"""How far beyond the horizon: so many times as far."""
DIVE_S: Final = 0.6
"""Deterministic time for each."""


class Dives:
    """What is still to be tried: a block of each program, then all of each."""

    def __init__(self) -> None:
        self._left = [(side, number) for side in (SIDES[0], WIDE) for number in range(PROGRAMS)]

    def next_in(self, opened: Sequence[Program], asked: int) -> tuple[Program, int] | None:
        """The next program of those opened so far, and the side of the block in it, once so many blocks were asked;
        None before, and where all were tried.
        """
        tried = 2 * PROGRAMS - len(self._left)
        if asked < EVERY * (tried + 1):
            return None
        for side, number in self._left:
            if number < len(opened):
                self._left.remove((side, number))
                return opened[number], side
        return None


def block_of(problem: Problem, places: Places, limit: int, side: int) -> Block | None:
    """The block with the least floor among the places below a limit; None where there is none."""
    leaves = places.leaves(limit)
    if not leaves:
        return None
    block = blocks_of(leaves, side)[0]
    return Block(places, block, scope_of(problem, places, block))
