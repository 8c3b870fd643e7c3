"""The shape that every loss of the engine has."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Ask, Stamp

CENTS = 100
Money = NDArray[np.float64]
Losses = NDArray[np.int64]
"""A loss in cents for each lower left corner; shape (rows, columns)."""


@dataclass(frozen=True, slots=True)
class Term:
    """One named loss. `place(context, room, variant, allowed)` is money at every lower left corner, where allowed.

    `stamps` and `asks` are what it counts between two rooms, by their numbers, and `left_out(context, room)` what it
    counts for a room that is left out. `in_model`: how the model counts its losses of places, so that a bound holds: in
    levels rounded down, whole where they have few values, or not at all.
    """

    name: str
    place: Callable[[Context, SizedRoom, Variant, Cells], Money | None] | None = None
    stamps: Callable[[Context, int, int], Iterable[Stamp]] | None = None
    asks: Callable[[Context, int, int], Iterable[Ask]] | None = None
    left_out: Callable[[Context, SizedRoom], float] | None = None
    in_model: Literal["levels", "whole", "no"] = "levels"

    def cents(self, context: Context, room: SizedRoom, variant: Variant, allowed: Cells) -> Losses | None:
        """Its losses of places in whole cents; None where it has nothing to say."""
        money = None if self.place is None else self.place(context, room, variant, allowed)
        return None if money is None else np.asarray(np.rint(CENTS * money), dtype=np.int64)

    def absent_cents(self, context: Context, room: SizedRoom) -> int:
        """What doing without the room loses by this term [cents]."""
        return 0 if self.left_out is None else round(CENTS * self.left_out(context, room))


def nowhere(context: Context) -> Money:
    """No loss anywhere."""
    return np.zeros((context.lattice.rows, context.lattice.columns))
