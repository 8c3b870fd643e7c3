"""The cook can look at the guests: a table is at most 90 degrees off the kitchen's front."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.pairs import Condition, Gaps
from optimizer.engine.rules.part import Part
from optimizer.layout.placement import FRONT_VECTORS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from optimizer.engine.model.pair_model import Literal, PairModel


@dataclass(frozen=True, slots=True)
class Ahead:
    """The middle of the other room lies before the front counter of the room at an end, or level with it."""

    end: int
    reach: None = None

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which it does."""
        kept = np.ones((len(gaps.up), len(gaps.right)), dtype=bool)
        found = gaps.middles_ahead(self.end)
        if found is not None:
            axis, ahead = found
            fits = ahead >= gaps.variant(self.end).counter_ahead
            kept &= fits[None, :] if axis == 0 else fits[:, None]
        return kept

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """Say so for each front that the room may have."""
        a, b = view.room(self.end), view.room(1 - self.end)
        away = (2 * b.x + b.width - 2 * a.x - a.width, 2 * b.y + b.depth - 2 * a.y - a.depth)
        for variant, literal in view.variants(self.end):
            if variant.front is not None:
                dx, dy = FRONT_VECTORS[variant.front]
                view.hold(dx * away[0] + dy * away[1] >= variant.counter_ahead, literal, unless=unless)


def _ahead(context: Context, first: int, second: int) -> Iterator[Condition]:
    kinds = [context.rooms[index].rules.kind for index in (first, second)]
    yield from (Ahead(end) for end in (0, 1) if (kinds[end], kinds[1 - end]) == ("kitchen", "gathering"))


PART = Part(conditions=_ahead)
