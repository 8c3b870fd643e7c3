"""Nothing is built near a kept tree's trunk: within six trunk diameters, or what the site says."""

from collections.abc import Iterator

from shapely import Point

from optimizer.catalogue import SizedRoom, root_rings
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.rules.part import Part


def _in_inner_ring(context: Context, _room: SizedRoom) -> Iterator[KeptOff]:
    trunks, trees = root_rings(context.site).inner_trunks, context.site.trees
    return (KeptOff(Point(tree.at), trunks * tree.trunk_diameter_ft) for tree in trees)


PART = Part(kept_off=_in_inner_ring)
