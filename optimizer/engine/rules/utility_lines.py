"""What is built keeps its distance from known lines in the ground."""

from shapely import LineString

from optimizer.catalogue import SizedRoom, line_clear_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, within
from optimizer.engine.rules.part import Part


def _near_lines(context: Context, room: SizedRoom) -> Cells | None:
    """Cells nearer to a known line than its clear width."""
    if not room.rules.built_as:
        return None
    site = context.site
    near = [within(context.lattice, LineString(line.line), line_clear_ft(site, line)) for line in site.utility_lines]
    return any_of(context.lattice, near)


PART = Part(cells=_near_lines)
