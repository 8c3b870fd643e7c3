"""What must be near is within the distance that was asked for, edge to edge and straight; the judge may walk it."""

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Cells
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
        return np.asarray(gaps.distance_ft <= self.distance_ft + _SLACK_FT)

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """For every two sizes: circles are measured from their middles, in half steps."""
        for inset, others in view.insets():
            self._hold(view, inset, (*unless, *others))

    def _hold(self, view: "PairModel", inset: int, unless: "Sequence[Literal]") -> None:
        """By a table of what one gap leaves for the other: exact on the grid."""
        parts = 2 if inset else 1
        most_ft, step_ft = self.distance_ft + _SLACK_FT + inset * self.step_ft / 2, self.step_ft / parts
        reach = math.floor(most_ft / step_ft)
        gap_x, gap_y, most = (view.number(0, reach) for _ in range(3))
        view.look_up(gap_x, [_left(steps * step_ft, most_ft, step_ft) for steps in range(reach + 1)], most)
        view.always(gap_y <= most)
        for across, gap in zip(view.gaps_by_axis(), (gap_x, gap_y), strict=True):
            for free in across:
                view.hold(parts * free + inset <= gap, unless=unless)


def _left(along_ft: float, most_ft: float, step_ft: float) -> int:
    """Most steps along one axis with so much along the other."""
    return math.floor(math.sqrt(max(0.0, most_ft**2 - along_ft**2)) / step_ft)


def _on_thing(context: Context, relation: Relation, variant: Variant, thing: Geometry) -> Cells:
    return on_any(context.lattice, variant, [KeptOff(thing, (relation.within_ft or 0.0) + TOLERANCE_FT)])


def _between(context: Context, relation: Relation, _end: int) -> Near:
    return Near(relation.within_ft or 0.0, context.lattice.step_ft)


NEAR = RelationPart("near", _on_thing, _between)
PART = NEAR.part()
