"""In the outer ring round a kept tree, rooms cover no more than a small share: alone here, together in the problem."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.root_rings import root_rings_of, taken_sqft
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part


def _within_share(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions where the room alone covers no more of a tree's outer ring than all may together."""
    if not room.rules.built_as or not context.site.trees:
        return None
    fits = [taken_sqft(ring, *variant.size, variant.is_round) <= ring.most_sqft for ring in root_rings_of(context)]
    return np.asarray(np.logical_and.reduce(fits))


PART = Part(positions=_within_share, whole=True)
