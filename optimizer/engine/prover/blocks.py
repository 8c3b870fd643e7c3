"""Blocks: places of a program's main room near to each other, each a small model of its own.

One that takes too long is split into smaller ones; one of a single place by the places of the next room.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from scipy import ndimage

from optimizer.engine.model import Scope, program_scope
from optimizer.engine.problem import Problem
from optimizer.engine.prover.places import Leaf, Places

SIDES: Final = (12, 6, 3, 1)
"""Sides of blocks of places, in steps: one that is not done in time is split into blocks of the next side."""


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Places of a room near to each other, beside the same places of the rooms before it.

    `level` is its side's place in `SIDES`, `tries` how often it was asked in vain since it was split.
    """

    places: Places
    leaves: tuple[Leaf, ...]
    scope: Scope
    """That of all places of the program that were open at first."""
    is_whole: bool = False
    """Whether it is not to be split."""
    level: int = 0
    tries: int = 0

    def below(self, limit: int) -> "Block":
        """The block without places that cannot be better."""
        return replace(self, leaves=tuple(leaf for leaf in self.leaves if leaf.floor < limit))

    def parts(self, limit: int) -> list["Block"]:
        """Smaller blocks with all that may be below the limit; itself once more where it cannot be split, and nothing
        where nothing may be.
        """
        left = self.below(limit)
        if not left.leaves:
            return []
        if self.is_whole:
            return [replace(left, tries=self.tries + 1)]
        if len(left.leaves) > 1:
            side = SIDES[min(self.level + 1, len(SIDES) - 1)]
            return [replace(left, leaves=part, level=self.level + 1, tries=0) for part in blocks_of(left.leaves, side)]
        leaf = left.leaves[0]
        if not leaf.others:
            return [replace(left, tries=self.tries + 1)]
        beyond = self.places.leaves(limit, leaf)
        return [replace(left, leaves=part, level=0, tries=0) for part in blocks_of(beyond, SIDES[0])]


def scope_of(problem: Problem, places: Places, leaves: Sequence[Leaf], *, within: Scope | None = None) -> Scope:
    """A program on the places that leaves leave open."""
    plain, masks = program_scope(problem, places.program.choices), places.masks(problem, leaves)
    variants = tuple(
        None if own is None else tuple(v for v in own if masks[room][v].any())
        for room, own in enumerate(plain.variants)
    )
    return Scope(variants, plain.optional, plain.sides, masks, within)


def pieces_of(leaves: Sequence[Leaf]) -> list[tuple[Leaf, ...]]:
    """Leaves by the pieces that their places fall into, each with its least floor first."""
    spots = np.array([(leaf.last.variant, leaf.last.y, leaf.last.x) for leaf in leaves])
    mask = np.zeros(spots.max(axis=0) + 1, dtype=bool)
    mask[tuple(spots.T)] = True
    labels, _ = ndimage.label(mask)
    pieces: dict[int, list[Leaf]] = {}
    for leaf, number in zip(leaves, labels[tuple(spots.T)].tolist(), strict=True):
        pieces.setdefault(number, []).append(leaf)
    return [tuple(piece) for piece in pieces.values()]


def blocks_of(leaves: Sequence[Leaf], side: int) -> list[tuple[Leaf, ...]]:
    """Leaves by blocks of places, each with its least floor first."""
    blocks: dict[tuple[int, int, int], list[Leaf]] = {}
    for leaf in sorted(leaves, key=lambda leaf: leaf.floor):
        blocks.setdefault((leaf.last.variant, leaf.last.x // side, leaf.last.y // side), []).append(leaf)
    return [tuple(block) for block in blocks.values()]
