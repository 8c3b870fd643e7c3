"""A room's choices in whole steps, with every quarter turn and front they may be placed in."""

import math
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from optimizer.catalogue import SizedChoice, SizedRoom, counter_middle_ft, ground_sqft
from optimizer.engine.grid.lattice import Lattice
from optimizer.layout import FRONT_VECTORS, Front

LEAST_AREA_SQFT: Final = 40.0
_EVEN: Final = 1e-6


class Shape(NamedTuple):
    """All of a variant that other rooms can tell. Variants of one shape do the same to their neighbours."""

    width: int
    depth: int
    front: Front | None
    anchor: tuple[int, int]
    counter_ahead: int
    covered: bool
    is_round: bool
    phase: int | None
    """Later phase that it waits for: with it what the judge refuses in phase 1 may hold."""


@dataclass(frozen=True, slots=True)
class Variant:
    """One choice in one turn. Sizes in steps as placed; the anchor is where ways to it are measured, in half steps
    from the lower left corner: the middle of the front where there is one, else the centre.
    """

    choice: int
    width: int
    depth: int
    front: Front | None
    anchor: tuple[int, int]
    covered: bool = False
    counter_ahead: int = 0
    """How far the middle of its front counter lies ahead of its centre, in half steps."""
    is_upright: bool = True
    """Whether the choice's width lies along x."""
    is_round: bool = False
    """Whether its ground is the circle in its square."""
    is_later: bool = False
    """Whether the room comes later; it is placed like the room itself."""
    phase: int | None = None
    """Later phase that all of it waits for; None where its choice does not wait."""

    @property
    def size(self) -> tuple[int, int]:
        """Steps along x and along y."""
        return self.width, self.depth

    @property
    def shape(self) -> Shape:
        """What other rooms can tell of it."""
        return Shape(
            width=self.width,
            depth=self.depth,
            front=self.front,
            anchor=self.anchor,
            counter_ahead=self.counter_ahead,
            covered=self.covered,
            is_round=self.is_round,
            phase=self.phase,
        )

    @property
    def is_pad(self) -> bool:
        """Whether its pad and stubs are built now."""
        return self.is_later and self.phase is None

    @property
    def area(self) -> float:
        """Area of its ground, in squares of a step."""
        return ground_sqft("circle" if self.is_round else "rectangle", self.width, self.depth)

    @property
    def inset(self) -> int:
        """Half steps from each side of its square to what its distances are measured from, before the same is taken off
        again: its middle if it is round, else its edge.
        """
        return self.width if self.is_round else 0


def variants_of(room: SizedRoom, lattice: Lattice, *, exact: bool = True) -> tuple[Variant, ...]:
    """Every turn of every choice, a needed length rounded up to whole steps.

    Without `exact` a room may also be one step short of its choice.
    """
    return tuple(
        replace(
            variant,
            covered=choice.cover is not None,
            counter_ahead=_counter_ahead(room, choice, lattice),
            is_round=choice.shape == "circle",
            is_later=choice.is_later,
            phase=choice.phase,
        )
        for index, choice in enumerate(room.choices)
        for short in ((0,) if exact else (0, 1))
        for variant in _turns(
            index,
            lattice.need(choice.width_ft) - short,
            lattice.need(choice.depth_ft) - short,
            has_front=room.rules.has_front,
        )
    )


def _counter_ahead(room: SizedRoom, choice: SizedChoice, lattice: Lattice) -> int:
    """Half steps, rounded up as every need is."""
    ahead_ft = counter_middle_ft(choice)[1] if room.rules.kind == "kitchen" else 0.0
    return math.ceil(2 * ahead_ft / lattice.step_ft - _EVEN)


def anchor_of(front: Front | None, width: int, depth: int) -> tuple[int, int]:
    """Middle of the front, or of the room where it has none, in half steps from its lower left corner."""
    x, y = (0, 0) if front is None else FRONT_VECTORS[front]
    return width * (1 + x), depth * (1 + y)


def _turns(choice: int, along: int, across: int, *, has_front: bool) -> tuple[Variant, ...]:
    def turn(width: int, depth: int, front: Front | None, *, upright: bool) -> Variant:
        return Variant(choice, width, depth, front, anchor_of(front, width, depth), is_upright=upright)

    fronts: tuple[Front | None, ...] = ("+y", "-y") if has_front else (None,)
    lying: tuple[Front | None, ...] = ("+x", "-x") if has_front else (None,) if along != across else ()
    return (
        *(turn(along, across, front, upright=True) for front in fronts),
        *(turn(across, along, front, upright=False) for front in lying),
    )
