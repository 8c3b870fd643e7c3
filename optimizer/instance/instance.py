"""The whole-number problem that the explorer and the model both solve. Losses are whole cents, lengths grid steps."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells
from optimizer.instance.pairs import Pair
from optimizer.instance.party_needs import Need
from optimizer.instance.reach import ReachGrid
from optimizer.instance.root_rings import RootRing
from optimizer.instance.variants import Variant

Losses = NDArray[np.int64]
"""A loss in cents for each lower left corner; shape (rows, columns)."""


@dataclass(frozen=True, eq=False)
class InstanceRoom:
    """A room with its variants; `allowed[v]` and `losses[v]` say where variant v may stand, and what each place
    costs whatever the other rooms do. `absent_loss` is what it costs to do without the room.
    """

    name: str
    required: bool
    walkable: bool
    variants: tuple[Variant, ...]
    allowed: tuple[Cells, ...]
    losses: tuple[Losses, ...]
    absent_loss: int
    near_misses: tuple[Losses, ...] = ()
    """What edges that nearly meet a building's or structure's cost variant v at each place; not in the model."""


@dataclass(frozen=True, slots=True)
class Pull:
    """Walking: cents for each half step of |dx| + |dy| between a room's anchor and another room's, or a fixed point.

    `at` is in half steps from the grid's origin.
    """

    room: int
    other: int | None
    at: tuple[int, int] | None
    rate: int


@dataclass(frozen=True)
class Instance:
    """A yard and a brief, ready to be searched."""

    context: Context
    rooms: tuple[InstanceRoom, ...]
    pairs: tuple[Pair, ...]
    pulls: tuple[Pull, ...]
    lines_x: tuple[int, ...]
    """Grid columns on which a wall or an edge of a structure lies."""
    lines_y: tuple[int, ...]
    order_rate: int
    """Cents for each step of room edge that lies on no shared line."""
    spendable: int | None
    """Cents that the rooms of phase 1 may cost at most; None without a ceiling."""
    ways_estimate: int
    """Cents that ways with their steps will cost, roughly; only a guide."""
    reach: ReachGrid | None
    """None where reachability is not asked for."""
    pavable_cells: int | None = None
    """Most cells that paved rooms may take together; None without a limit. Paths take of it too, which is not in it."""
    rings: tuple[RootRing, ...] = ()
    """Outer rings of the kept trees; empty where they are not asked for."""
    needs: tuple[Need, ...] = ()
    """What the placed rooms must give the guests together."""
    disorder_rate: int = 0
    """Cents for each step by which `FREE_PART` times the edge on no shared line passes all room edges."""
    near_miss_rate: int = 0
    """Cents for each step of edge that nearly meets another; not in the model, whose bound is the lower for it."""

    def paved_cells(self, room: int, variant: int) -> int:
        """Cells that a room's variant paves."""
        taken = self.rooms[room].variants[variant]
        return taken.width * taken.depth if self.context.rooms[room].rules.paved else 0

    def pair(self, one: int, other: int) -> Pair | None:
        """Rules between two rooms, whichever is first."""
        low, high = min(one, other), max(one, other)
        return next((pair for pair in self.pairs if (pair.first, pair.second) == (low, high)), None)
