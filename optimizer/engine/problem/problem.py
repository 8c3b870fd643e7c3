"""The whole-number problem that explorer and model both solve. Losses are whole cents, lengths grid steps."""

from dataclasses import dataclass
from functools import cached_property

from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.root_rings import RootRing
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Ask, Contact, Stamp
from optimizer.engine.problem.reach import ReachGrid
from optimizer.engine.terms import Losses, Order, Pull


@dataclass(frozen=True, eq=False)
class ProblemRoom:
    """A room with its variants: what each costs whatever its place, and where it may stand.

    `places[v]` is what every place costs besides, exactly; `floors[v]` the part of it that the model counts, in whole
    levels rounded down. `absent_loss` is what it costs to do without the room, `absent_place` the part of it
    that is a loss of places. A place may give back what another room loses: its own figure can lie below 0.
    """

    name: str
    required: bool
    walkable: bool
    is_built: bool
    """Whether it takes of the rings round trees."""
    variants: tuple[Variant, ...]
    losses: tuple[int, ...]
    allowed: tuple[Cells, ...]
    places: tuple[Losses, ...]
    floors: tuple[Losses, ...]
    absent_loss: int
    absent_place: int = 0


@dataclass(frozen=True)
class RoomPair:
    """What holds and counts between two rooms, by their numbers."""

    first: int
    second: int
    contact: Contact
    stamps: tuple[Stamp, ...]
    asks: tuple[Ask, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Guide:
    """What ways, steps and runs will likely cost, and where the judge will likely refuse: it guides the explorer, no
    proof rests on it.

    `runs[room][variant]` and `ways` are cents, `doubts[room][variant]` positions, None where there is no doubt.
    """

    runs: tuple[tuple[int, ...], ...]
    ways: int
    doubts: tuple[tuple[Cells | None, ...], ...] = ()


@dataclass(frozen=True, eq=False)
class Problem:
    """A yard and a brief, ready to be searched."""

    context: Context
    rooms: tuple[ProblemRoom, ...]
    pairs: tuple[RoomPair, ...]
    pulls: tuple[Pull, ...]
    order: Order
    amounts: tuple[Amount, ...]
    rings: tuple[RootRing, ...]
    """Outer rings of the kept trees; empty where the rule is not in force."""
    reach: ReachGrid | None
    """None where reachability is not asked for."""
    guide: Guide

    @cached_property
    def _pair_of(self) -> dict[tuple[int, int], RoomPair]:
        return {(pair.first, pair.second): pair for pair in self.pairs}

    def pair(self, one: int, other: int) -> RoomPair:
        """What holds between two rooms, whichever is first."""
        return self._pair_of[min(one, other), max(one, other)]

    @property
    def budget(self) -> Amount | None:
        """The limit on money; None without a ceiling."""
        return next((amount for amount in self.amounts if amount.rule == "budget"), None)

    @property
    def optional(self) -> tuple[int, ...]:
        """Rooms that may be left out."""
        return tuple(index for index, room in enumerate(self.rooms) if not room.required)
