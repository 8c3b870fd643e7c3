"""The shape that every hard rule's part of the engine has."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from optimizer.catalogue import PriceBook, SizedRoom
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Condition, Contact, View

Variants = Sequence[tuple[Variant, ...]]
"""The variants of each room, in the brief's order."""


@dataclass(frozen=True, slots=True)
class Part:
    """One rule's part of the engine; each function states the rule where it applies, and is left out where it does not.

    Of one room: `sizes` (whether a variant is one at all), `kept_off` (ground that no part of the room may take) and
    `positions` (lower left corners where a variant may stand). Of two rooms, by their numbers: `contact`, `conditions`
    and `looks`. Of all: `amounts`. Where `whole`, the problem itself asks whether the rule is in force. A part in
    which nothing is said leaves the rule to the judge; `doubts` are positions that it will likely refuse, which guide
    the explorer and nothing else.
    """

    sizes: Callable[[Context, SizedRoom, Variant], bool] | None = None
    kept_off: Callable[[Context, SizedRoom], Iterable[KeptOff]] | None = None
    positions: Callable[[Context, SizedRoom, Variant], Cells | None] | None = None
    contact: Callable[[Context, int, int], Contact | None] | None = None
    conditions: Callable[[Context, int, int], Iterable[Condition]] | None = None
    looks: Callable[[Context, int, int], Iterable[View]] | None = None
    amounts: Callable[[Context, Variants, PriceBook], Iterable[Amount]] | None = None
    doubts: Callable[[Context, SizedRoom, Variant], Cells | None] | None = None
    whole: bool = False

    @property
    def is_judged_only(self) -> bool:
        """Whether the engine leaves the rule to the judge."""
        return replace(self, doubts=None) == Part()


JUDGED_ONLY = Part()
