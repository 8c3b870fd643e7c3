"""What a place alone does to the order of the plan: under a structure, across the contour, off every axis."""

from optimizer.catalogue import FOCAL_KIND, SizedRoom, rates
from optimizer.engine.grid.anchors import corners_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.terms.term import Money, Term
from optimizer.fields import across_contour_ft, off_axis, off_structure_ft


def _order(context: Context, room: SizedRoom, variant: Variant, allowed: Cells) -> Money:
    x, y = corners_ft(context.lattice, allowed.shape)
    size = {"width_ft": variant.width * context.lattice.step_ft, "depth_ft": variant.depth * context.lattice.step_ft}
    rate, site = rates(), context.site
    result = rate.off_structure * off_structure_ft(site, room.name, x, y, **size)
    result += rate.across_contour * across_contour_ft(site, x, y, **size)
    if room.rules.kind == FOCAL_KIND:
        result += rate.off_axis * off_axis(site, x, y, **size)
    return context.scenario.brief.weights.order * result


TERM = Term("order of places", place=_order)
