"""What must be apart keeps the distance that was asked for, edge to edge and straight."""

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
from optimizer.engine.rules.relations import RelationPart

if TYPE_CHECKING:
    from collections.abc import Sequence

    from optimizer.engine.model.pair_model import Linear, Literal, PairModel

_SLACK_FT = 1e-6


@dataclass(frozen=True, slots=True)
class Apart:
    """Two rooms at least this far from each other; with `covered_end` only where the room there has a roof."""

    distance_ft: float
    step_ft: float
    covered_end: int | None = None

    @property
    def reach(self) -> int:
        """Whole steps at which they are surely apart."""
        return math.ceil((self.distance_ft - _SLACK_FT) / self.step_ft)

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which they are."""
        if self.covered_end is not None and not gaps.variant(self.covered_end).covered:
            return np.ones((len(gaps.up), len(gaps.right)), dtype=bool)
        return np.asarray(gaps.distance_ft >= self.distance_ft - _SLACK_FT)

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """For every two sizes: circles are measured from their middles, in half steps."""
        if self.distance_ft <= _SLACK_FT:
            return
        if self.covered_end is not None:
            bare = [literal for variant, literal in view.variants(self.covered_end) if not variant.covered]
            unless = (*unless, *bare)
        for inset, others in view.insets():
            self._hold(view, inset, (*unless, *others))

    def _hold(self, view: "PairModel", inset: int, unless: "Sequence[Literal]") -> None:
        """On one side in x (or none) and on one in y (or none), with the two gaps outside the quarter disc."""
        parts = 2 if inset else 1
        least_ft, step_ft = self.distance_ft - _SLACK_FT + inset * self.step_ft / 2, self.step_ft / parts
        reach = math.ceil(least_ft / step_ft)
        gap_x, gap_y = (
            _real_gap(view, [parts * free + inset for free in across], reach, unless) for across in view.gaps_by_axis()
        )
        least = view.number(0, reach)
        view.look_up(gap_x, [_asked(steps * step_ft, least_ft, step_ft) for steps in range(reach + 1)], least)
        view.always(gap_y >= least)


def _real_gap(view: "PairModel", sides: "Sequence[Linear]", reach: int, unless: "Sequence[Literal]") -> "Linear":
    """A gap that is no larger than the rooms really leave on one of two opposite sides, or 0."""
    gap = view.number(0, reach)
    literals = []
    for free in sides:
        literals.append(view.boolean())
        view.hold(free >= gap, literals[-1], unless=unless)
    none = view.boolean()
    view.always(gap == 0, none)
    view.any_of([*literals, none])
    return gap


def _asked(along_ft: float, least_ft: float, step_ft: float) -> int:
    """Least steps along one axis with so much along the other."""
    return math.ceil(math.sqrt(max(0.0, least_ft**2 - along_ft**2)) / step_ft - 1e-9)


def _on_thing(context: Context, relation: Relation, variant: Variant, thing: Geometry) -> Cells:
    return ~on_any(context.lattice, variant, [KeptOff(thing, relation.at_least_ft or 0.0)])


def _between(context: Context, relation: Relation, _end: int) -> Apart:
    return Apart(relation.at_least_ft or 0.0, context.lattice.step_ft)


APART = RelationPart("apart", _on_thing, _between)
PART = APART.part()
