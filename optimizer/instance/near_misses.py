"""What each place costs a room whose edges nearly meet those of a building or structure."""

import numpy as np

from optimizer.catalogue import rates
from optimizer.fields import are_neighbours, nearly_level, site_edges
from optimizer.instance.context import Context
from optimizer.instance.instance import Losses
from optimizer.instance.variants import Variant

CENTS = 100
_ROUNDING = 1e-6  # of losses that turn out just below a whole cent in metres and on it in feet


def near_miss_losses(context: Context, variant: Variant) -> Losses:
    """Losses at every position [cents], exactly as they are measured: of two edges the shorter counts."""
    lattice = context.lattice
    x = lattice.x0_ft + lattice.step_ft * np.arange(lattice.columns)
    y = lattice.y0_ft + lattice.step_ft * np.arange(lattice.rows)
    width_ft, depth_ft = lattice.step_ft * variant.width, lattice.step_ft * variant.depth
    missed_ft = np.zeros((lattice.rows, lattice.columns))
    for edge in site_edges(context.site):
        level = edge.axis == 1
        (across, size), (along, length) = ((y, depth_ft), (x, width_ft)) if level else ((x, width_ft), (y, depth_ft))
        count = 0.0 + nearly_level(across - edge.at_ft) + nearly_level(across + size - edge.at_ft)
        near = are_neighbours(along, along + length, edge.from_ft, edge.to_ft)
        table = min(edge.length_ft, length) * np.outer(count, near)
        missed_ft += table if level else table.T
    cents = CENTS * rates().near_miss * context.scenario.brief.weights.order * missed_ft
    return np.asarray(np.floor(cents + _ROUNDING), dtype=np.int64)
