"""A garden door without a terrace, where one room alone could be it; where several could, the score alone knows."""

from optimizer.catalogue import SizedRoom, rates
from optimizer.engine.grid.anchors import corners_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.terms.term import Money, Term, nowhere
from optimizer.fields.terraces import TERRACE_KINDS, garden_doors, meets_landing


def _bare_doors(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money | None:
    candidates = [other.name for other in context.rooms if other.rules.kind in TERRACE_KINDS]
    doors = garden_doors(context.site, context.scenario.brief)
    if candidates != [room.name] or not doors:
        return None
    lattice, result = context.lattice, nowhere(context)
    x, y = corners_ft(lattice, (lattice.rows, lattice.columns))
    size = {"width_ft": variant.width * lattice.step_ft, "depth_ft": variant.depth * lattice.step_ft}
    for door, rate in zip(doors, rates().bare_doors, strict=False):
        result += rate * ~meets_landing(context.site, door, x, y, **size)
    return context.scenario.brief.weights.order * result


TERM = Term("terraces", place=_bare_doors)
