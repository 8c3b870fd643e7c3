"""A room that must face another opens towards it."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation
from optimizer.engine.grid.anchors import centres_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Gaps
from optimizer.engine.rules.relations import TOLERANCE_FT, RelationPart, everywhere
from optimizer.layout.placement import FRONT_VECTORS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from optimizer.engine.model.pair_model import Literal, PairModel


@dataclass(frozen=True, slots=True)
class Faces:
    """The room at an end opens towards the other, which lies beyond its open side and beside it in the other axis."""

    end: int
    reach: None = None

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which it does; a room without a front faces everything."""
        found = gaps.ahead(self.end)
        if found is None:
            return np.ones((len(gaps.up), len(gaps.right)), dtype=bool)
        axis, ahead = found
        beside = (gaps.y if axis == 0 else gaps.x) < 0
        return np.outer(beside, ahead >= 0) if axis == 0 else np.outer(ahead >= 0, beside)

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """Say so for each front that the room may have."""
        for variant, literal in view.variants(self.end):
            if variant.front is not None:
                dx, dy = FRONT_VECTORS[variant.front]
                beyond, beside = view.gaps_beyond((dx, dy), self.end)
                view.hold(beyond >= 0, literal, unless=unless)
                for gap in beside:
                    view.hold(gap <= -1, literal, unless=unless)


def _on_thing(context: Context, relation: Relation, variant: Variant, thing: Geometry) -> Cells:
    """Positions at which a room opens towards a thing; who is only faced stands anywhere."""
    is_room_first = context.thing(relation.between[0]) is None
    if not is_room_first or variant.front is None:
        return everywhere(context)
    along, across = (0, 1) if variant.front[1] == "y" else (1, 0)
    low, high = (thing.bounds[along], thing.bounds[across]), (thing.bounds[along + 2], thing.bounds[across + 2])
    centre = centres_ft(context.lattice, variant)
    half = [size * context.lattice.step_ft / 2 for size in (variant.width, variant.depth)]
    beside = (centre[along] + half[along] > low[0] + TOLERANCE_FT) & (
        centre[along] - half[along] < high[0] - TOLERANCE_FT
    )
    if variant.front[0] == "+":
        return np.asarray(beside & (centre[across] + half[across] <= low[1] + TOLERANCE_FT))
    return np.asarray(beside & (centre[across] - half[across] >= high[1] - TOLERANCE_FT))


FACES = RelationPart("faces", _on_thing, lambda _context, _relation, end: Faces(end))
PART = FACES.part()
