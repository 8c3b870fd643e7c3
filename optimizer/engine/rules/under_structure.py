"""Only rooms that are allowed there stand under an existing structure, with no second roof."""

from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells, any_in_window
from optimizer.engine.grid.raster import any_of, covered
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part


def _under_other_roofs(context: Context, room: SizedRoom) -> Cells:
    """Cells under a structure that may not hold the room."""
    return _under(context, room, may_hold=False)


def _second_roof(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions of a covered choice that lie under no structure."""
    if not variant.covered:
        return None
    roofs = _under(context, room, may_hold=True)
    return ~any_in_window(roofs, width=variant.width, depth=variant.depth) if roofs.any() else None


def _under(context: Context, room: SizedRoom, *, may_hold: bool) -> Cells:
    roofs = [Polygon(s.outline) for s in context.site.structures if (room.name in s.may_hold) == may_hold]
    return any_of(context.lattice, [covered(context.lattice, roof) for roof in roofs])


PART = Part(cells=_under_other_roofs, positions=_second_roof)
