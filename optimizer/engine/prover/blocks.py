"""Blocks: places of a program's main room near to each other, each a small model of its own."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage

from optimizer.engine.model import Scope, program_scope
from optimizer.engine.problem import Problem
from optimizer.engine.prover.places import Leaf, Places
from optimizer.engine.prover.programs import Program


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Places of a program's main room near to each other; `level` counts how often it was split or given more time."""

    places: Places
    program: Program
    leaves: tuple[Leaf, ...]
    level: int
    scope: Scope
    """That of all places of the program that were open at first."""
    is_whole: bool = False
    """Whether these are most of the program's places."""

    def below(self, limit: int) -> "Block":
        """The block without places that cannot be better."""
        return replace(self, leaves=tuple(leaf for leaf in self.leaves if leaf.floor < limit))


def scope_of(
    problem: Problem, places: Places, program: Program, leaves: Sequence[Leaf], *, within: Scope | None = None
) -> Scope:
    """A program on the places that leaves leave open."""
    plain, masks = program_scope(problem, program.choices), places.masks(problem, leaves)
    variants = tuple(
        None if own is None else tuple(v for v in own if masks[room][v].any())
        for room, own in enumerate(plain.variants)
    )
    return Scope(variants, plain.optional, plain.sides, masks, within)


def pieces_of(leaves: Sequence[Leaf]) -> list[tuple[Leaf, ...]]:
    """Leaves by the pieces that their places fall into, each with its least floor first."""
    spots = np.array([(leaf.spot.variant, leaf.spot.y, leaf.spot.x) for leaf in leaves])
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
        blocks.setdefault((leaf.spot.variant, leaf.spot.x // side, leaf.spot.y // side), []).append(leaf)
    return [tuple(block) for block in blocks.values()]
