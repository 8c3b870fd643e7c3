"""Nothing is built near a kept tree's trunk: within six trunk diameters, or what the site says."""

from shapely import Point

from optimizer.catalogue import SizedRoom, root_rings
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, within
from optimizer.engine.rules.part import Part


def _in_inner_ring(context: Context, _room: SizedRoom) -> Cells:
    trunks, trees = root_rings(context.site).inner_trunks, context.site.trees
    near = [within(context.lattice, Point(tree.at), trunks * tree.trunk_diameter_ft) for tree in trees]
    return any_of(context.lattice, near)


PART = Part(cells=_in_inner_ring)
