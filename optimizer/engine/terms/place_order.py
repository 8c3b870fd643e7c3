"""What a place alone does to the order of the plan: under a structure, across the contour, off every axis."""

from functools import lru_cache

from optimizer.catalogue import FOCAL_KIND, SizedRoom, rates
from optimizer.engine.grid.anchors import corners_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.terms.term import Money, Term
from optimizer.fields import across_contour_ft, off_axis, off_structure_ft


def _order(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money:
    return context.scenario.brief.weights.order * _of_size(context, room, variant.width, variant.depth)


@lru_cache(maxsize=128)
def _of_size(context: Context, room: SizedRoom, width: int, depth: int) -> Money:
    lattice, site, rate = context.lattice, context.site, rates()
    x, y = corners_ft(lattice, (lattice.rows, lattice.columns))
    size = {"width_ft": width * lattice.step_ft, "depth_ft": depth * lattice.step_ft}
    result = rate.off_structure * off_structure_ft(site, room.name, x, y, **size)
    result += rate.across_contour * across_contour_ft(site, x, y, **size)
    if room.rules.kind == FOCAL_KIND:
        result += rate.off_axis * off_axis(site, x, y, **size)
    return result


TERM = Term("order of places", place=_order)
