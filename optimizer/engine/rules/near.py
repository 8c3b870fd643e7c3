"""What must be near is within the distance that was asked for, edge to edge and straight; the judge may walk it."""

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells, any_in_window
from optimizer.engine.grid.raster import within
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Gaps
from optimizer.engine.rules.relations import TOLERANCE_FT, RelationPart

if TYPE_CHECKING:
    from collections.abc import Sequence

    from optimizer.engine.model.pair_model import Literal, PairModel

_SLACK_FT = 1e-6


@dataclass(frozen=True, slots=True)
class Near:
    """Two rooms at most this far from each other."""

    distance_ft: float
    step_ft: float

    @property
    def reach(self) -> int:
        """Whole steps that the distance has."""
        return math.floor((self.distance_ft + _SLACK_FT) / self.step_ft)

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which they are."""
        return np.asarray(gaps.squared_ft <= (self.distance_ft + _SLACK_FT) ** 2)

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """By a table of what one gap leaves for the other: exact on the grid."""
        gap_x, gap_y, most = (view.number(0, self.reach) for _ in range(3))
        view.look_up(gap_x, [self._left(steps) for steps in range(self.reach + 1)], most)
        view.always(gap_y <= most)
        for across, gap in zip(view.gaps_by_axis(), (gap_x, gap_y), strict=True):
            for free in across:
                view.hold(free <= gap, unless=unless)

    def _left(self, steps: int) -> int:
        """Most steps along one axis with so many along the other."""
        squared = (self.distance_ft + _SLACK_FT) ** 2 - (steps * self.step_ft) ** 2
        return math.floor(math.sqrt(max(0.0, squared)) / self.step_ft)


def _on_thing(context: Context, relation: Relation, variant: Variant, thing: Geometry) -> Cells:
    close = within(context.lattice, thing, (relation.within_ft or 0.0) + TOLERANCE_FT)
    return any_in_window(close, width=variant.width, depth=variant.depth)


def _between(context: Context, relation: Relation, _end: int) -> Near:
    return Near(relation.within_ft or 0.0, context.lattice.step_ft)


NEAR = RelationPart("near", _on_thing, _between)
PART = NEAR.part()
