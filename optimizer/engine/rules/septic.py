"""What is built keeps its distance from septic tanks, septic fields and overhead lines."""

from shapely import Polygon

from optimizer.catalogue import SizedRoom, keep_out_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, covered, within
from optimizer.engine.rules.part import Part


def _too_near(context: Context, room: SizedRoom) -> Cells | None:
    """Cells too near for what the room is built as, and all of a septic field."""
    if not room.rules.built_as:
        return None
    found = []
    for area in context.site.keep_outs:
        outline, asked = Polygon(area.outline), keep_out_ft(context.site, area.kind, room.rules.built_as)
        found.append(within(context.lattice, outline, asked))
        if area.kind == "septic field":
            found.append(covered(context.lattice, outline))
    return any_of(context.lattice, found)


PART = Part(cells=_too_near)
