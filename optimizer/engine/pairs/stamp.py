"""The shape of all that two rooms do to each other by offset: losses, and conditions with what they cost."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Protocol

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.pairs.gaps import Gaps, Steps

if TYPE_CHECKING:
    from collections.abc import Sequence

    from optimizer.engine.model.pair_model import Linear, Literal, PairModel

FORBIDDEN: Final = 10**14
"""Cents of what may not be; sums of a few hundred stay inside 64 bits."""

Cents = NDArray[np.int64]


class Stamp(Protocol):
    """A loss by offset. `cents` is what explorer and exact count read; the model may know less, never more."""

    @property
    def name(self) -> str:
        """Rule or term whose stamp it is."""

    @property
    def reach(self) -> int | None:
        """Free steps between the rooms, along x or y, beyond which the loss no longer changes; None where it may."""

    @property
    def in_model(self) -> bool:
        """Whether the model counts it; else `add_to` adds nothing."""

    def cents(self, gaps: Gaps) -> Cents:
        """Loss at every offset, FORBIDDEN where it may not be; shape (len(gaps.up), len(gaps.right))."""

    def add_to(self, view: "PairModel") -> "Linear":
        """Add its constraints to the model and give its loss there [cents], which is no more than `cents`."""


class Along(Stamp, Protocol):
    """A stamp that is a sum of what the offset along x does and what the offset along y does."""

    def cents_along(self, gaps: Gaps) -> tuple[Cents, Cents]:
        """Losses by offset along x and along y; neither is below 0."""


class Condition(Protocol):
    """Something asked of two rooms: kept or not at each offset."""

    @property
    def reach(self) -> int | None:
        """As of a stamp."""

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which it is kept."""

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """Say in the model that it is kept while both rooms are there, unless one of the literals is true."""


@dataclass(frozen=True)
class Penalty:
    """A condition, and what it costs where it is not kept: FORBIDDEN for a rule, money for a wish."""

    name: str
    condition: Condition
    loss: int = FORBIDDEN
    in_model: bool = True

    @property
    def reach(self) -> int | None:
        """The condition's."""
        return self.condition.reach

    def cents(self, gaps: Gaps) -> Cents:
        """Loss at every offset."""
        return np.where(self.condition.kept(gaps), 0, np.int64(self.loss))

    def add_to(self, view: "PairModel") -> "Linear":
        """A rule is held; a wish is held unless it is missed at its loss."""
        if self.loss >= FORBIDDEN:
            self.condition.hold(view, unless=())
            return 0
        missed = view.boolean(f"{self.name} missed")
        self.condition.hold(view, unless=(missed,))
        return self.loss * missed


def sum_along(along: tuple[Steps, Steps]) -> Cents:
    """The two parts of a sum, over a window."""
    return np.asarray(along[0][None, :] + along[1][:, None])
