"""The shape that every rule's part of the model has."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from optimizer.catalogue import SizedRoom
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells
from optimizer.instance.pairs import Pair
from optimizer.instance.variants import Variant


@dataclass(frozen=True, slots=True)
class Limits:
    """What holds for a whole layout."""

    required: bool = False
    """Whether required rooms must be placed."""
    exact_sizes: bool = False
    """Whether a room has at least the size of its choice."""
    proportion: bool = False
    ceiling: bool = False
    paved: bool = False
    """Whether the paved share of the open yard is limited."""
    rings: bool = False
    """Whether rooms share out what the rings round trees bear."""
    reachable: bool = False
    table: bool = False
    """Whether the everyday guests sit at one table."""
    party: bool = False
    """Whether the party finds seats and ground to stand on."""


@dataclass(frozen=True, slots=True)
class Part:
    """One rule's part of the model; each function states the rule where it applies, and is left out where it does not.

    `cells(context, room)`: cells that no part of the room may cover. `positions(context, room, variant)`: lower left
    corners where the room may stand. `pair(context, pair)`: the pair with the rule added. `limits(limits)`: what it
    adds for the whole layout.
    """

    cells: Callable[[Context, SizedRoom], Cells | None] | None = None
    positions: Callable[[Context, SizedRoom, Variant], Cells | None] | None = None
    pair: Callable[[Context, Pair], Pair] | None = None
    limits: Callable[[Limits], Limits] | None = None


def limit(name: str) -> Part:
    """A part that switches one limit of the whole layout on."""
    return Part(limits=lambda limits: replace(limits, **{name: True}))
