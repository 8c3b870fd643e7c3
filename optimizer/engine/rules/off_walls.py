"""No room stands across an existing wall, fence or hedge; along one it may."""

from itertools import pairwise

import numpy as np
from shapely import LineString

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.crossed import crossed
from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part


def _beside_walls(context: Context, _room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions through which no wall runs, openings included: people pass there."""
    steps = [ends for wall in context.site.walls for ends in pairwise(wall.line)]
    if not steps:
        return None
    if variant.is_round:
        return ~on_any(context.lattice, variant, [KeptOff(LineString(ends)) for ends in steps])
    found = [crossed(context.lattice, *ends, width=variant.width, depth=variant.depth) for ends in steps]
    return np.asarray(~np.logical_or.reduce(found))


PART = Part(positions=_beside_walls)
