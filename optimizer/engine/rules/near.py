"""What must be near is within the distance that was asked for, edge to edge and straight; the judge may walk it."""

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation
from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.walked_round import is_far_round
from optimizer.engine.pairs import Gaps
from optimizer.engine.rules.relations import TOLERANCE_FT, RelationPart

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from optimizer.engine.model.pair_model import Literal, PairModel
    from optimizer.site import Point

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


def _far_round(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions from which the judge will likely find a door or entrance too far on foot."""
    if variant.front is None:
        return None
    found = [is_far_round(context, at, variant, within_ft) for at, within_ft in _walked_to(context, room)]
    return np.logical_or.reduce(found) if found else None


def _walked_to(context: Context, room: SizedRoom) -> "Iterator[tuple[Point, float]]":
    """Doors and entrances that a room must be near to on foot, as posed points, and how near [ft]."""
    doors, entrances = context.site.doors, context.site.entrances
    ways_in = {door.name: door.at for door in doors} | {entrance.name: entrance.at for entrance in entrances}
    for relation in context.scenario.brief.relations:
        if relation.kind == "near" and relation.is_hard and relation.by == "walking" and room.name in relation.between:
            yield from ((ways_in[name], relation.within_ft or 0.0) for name in relation.between if name in ways_in)


NEAR = RelationPart("near", _on_thing, _between)
PART = replace(NEAR.part(), doubts=_far_round)
