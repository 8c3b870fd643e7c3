"""Rooms that must touch share as much edge as was asked for."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import covered, shared_edge
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Contact, Gaps
from optimizer.engine.rules.part import Part
from optimizer.engine.rules.relations import RelationPart, joins

if TYPE_CHECKING:
    from collections.abc import Sequence

    from optimizer.engine.model.pair_model import Literal, PairModel

SHARED_FT: Final = 3.0


@dataclass(frozen=True, slots=True)
class Touching:
    """Two rooms that share so many steps of edge: as a wish. As a rule it is part of how the rooms stand side by side,
    which knows of open sides too.
    """

    share: int
    reach: int = 0

    def kept(self, gaps: Gaps) -> Cells:
        """Offsets at which they do."""
        return gaps.touching(self.share)

    def hold(self, view: "PairModel", *, unless: "Sequence[Literal]") -> None:
        """On one of the four sides."""
        literals = []
        for side in view.gaps():
            literals.append(view.boolean())
            view.touch(side, self.share, literals[-1])
        view.any_of([*literals, *unless, *view.absent()])


def _on_thing(context: Context, relation: Relation, variant: Variant, thing: Geometry) -> Cells:
    cells = covered(context.lattice, thing)
    return np.asarray(shared_edge(cells, width=variant.width, depth=variant.depth) >= _share(context, relation))


def _between(context: Context, relation: Relation, _end: int) -> Touching:
    return Touching(_share(context, relation))


def _share(context: Context, relation: Relation) -> int:
    return max(1, context.lattice.need(relation.shared_edge_ft or SHARED_FT))


def _contact(context: Context, first: int, second: int) -> Contact | None:
    asked = (
        _share(context, relation)
        for relation in context.scenario.brief.relations
        if relation.kind == "touching" and relation.is_hard and joins(context, relation, first, second)
    )
    share = max(asked, default=None)
    return None if share is None else Contact(must_touch=True, touch_share=share)


TOUCHING = RelationPart("touching", _on_thing, _between)
PART = Part(positions=TOUCHING.part().positions, contact=_contact)
