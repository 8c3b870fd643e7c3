"""Keep-out ground has only what is allowed there."""

from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, covered
from optimizer.engine.rules.part import Part


def _kept_out(context: Context, room: SizedRoom) -> Cells:
    """Cells of kept-out ground that does not allow the room's kind."""
    areas = [Polygon(k.outline) for k in context.site.keep_outs if room.rules.kind not in k.allow]
    return any_of(context.lattice, [covered(context.lattice, area) for area in areas])


PART = Part(cells=_kept_out)
