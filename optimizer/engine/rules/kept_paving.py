"""No room stands on paving that is kept as it is."""

from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, covered
from optimizer.engine.rules.part import Part


def _on_kept_paving(context: Context, _room: SizedRoom) -> Cells | None:
    kept = [Polygon(paving.outline) for paving in context.site.paving if paving.then == "keep"]
    return any_of(context.lattice, [covered(context.lattice, ground) for ground in kept]) if kept else None


PART = Part(cells=_on_kept_paving)
