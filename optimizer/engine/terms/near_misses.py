"""Edges that nearly meet those of a building, a structure or another room. Not in the model, whose bound is the lower
for it.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

import numpy as np

from optimizer.catalogue import SizedRoom, rates
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Gaps
from optimizer.engine.pairs.gaps import Steps
from optimizer.engine.pairs.stamp import Cents
from optimizer.engine.terms.term import CENTS, Money, Term, nowhere
from optimizer.fields import NEIGHBOUR_FT, are_neighbours, nearly_level, site_edges

if TYPE_CHECKING:
    from optimizer.engine.model.pair_model import Linear, PairModel

NAME = "near misses"
_SLACK = 1e-6


@dataclass(frozen=True, slots=True)
class NearMiss:
    """Parallel edges of neighbours that are neither flush nor well apart: cents for each step of the shorter one."""

    rate: int
    reach: int
    name: str = NAME
    in_model: bool = False

    def cents(self, gaps: Gaps) -> Cents:
        """Loss at every offset, edges along both axes counted."""
        if gaps.inset:
            # A circle has no edge that could nearly meet another.
            return np.zeros((len(gaps.up), len(gaps.right)), dtype=np.int64)
        widths, depths = (gaps.first.width, gaps.second.width), (gaps.first.depth, gaps.second.depth)
        upright, level = _count(gaps.right, *widths, gaps.step_ft), _count(gaps.up, *depths, gaps.step_ft)
        steps = min(depths) * np.outer(gaps.y <= self.reach, upright)
        steps += min(widths) * np.outer(level, gaps.x <= self.reach)
        return np.asarray(self.rate * steps)

    def add_to(self, _view: "PairModel") -> "Linear":
        """Nothing: a floor."""
        return 0


def _count(offsets: Steps, own: int, other: int, step_ft: float) -> Steps:
    """How many pairs of edges across one axis nearly meet, by offset along it."""
    off = [nearly_level(step_ft * (offsets + edge - line)) for edge, line in product((0, own), (0, other))]
    return np.asarray(np.sum(off, axis=0, dtype=np.int64))


def _between_rooms(context: Context, _first: int, _second: int) -> Iterator[NearMiss]:
    step_ft = context.lattice.step_ft
    rate = round(CENTS * rates().near_miss * context.scenario.brief.weights.order * step_ft)
    yield NearMiss(rate, int(NEIGHBOUR_FT / step_ft + _SLACK))


def _to_site(context: Context, _room: SizedRoom, variant: Variant, _allowed: Cells) -> Money:
    """Loss at every position, exactly as it is measured: of two edges the shorter counts."""
    if variant.is_round:
        return nowhere(context)
    lattice = context.lattice
    x = lattice.x0_ft + lattice.step_ft * np.arange(lattice.columns)
    y = lattice.y0_ft + lattice.step_ft * np.arange(lattice.rows)
    width_ft, depth_ft = lattice.step_ft * variant.width, lattice.step_ft * variant.depth
    missed_ft = nowhere(context)
    for edge in site_edges(context.site):
        level = edge.axis == 1
        (across, size), (along, length) = ((y, depth_ft), (x, width_ft)) if level else ((x, width_ft), (y, depth_ft))
        count = 0.0 + nearly_level(across - edge.at_ft) + nearly_level(across + size - edge.at_ft)
        near = are_neighbours(along, along + length, edge.from_ft, edge.to_ft)
        table = min(edge.length_ft, length) * np.outer(count, near)
        missed_ft += table if level else table.T
    return rates().near_miss * context.scenario.brief.weights.order * missed_ft


TERM = Term(NAME, place=_to_site, stamps=_between_rooms, in_model="no")
