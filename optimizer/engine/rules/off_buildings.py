"""No room stands in a building."""

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, covered
from optimizer.engine.rules.part import Part


def _in_building(context: Context, _room: SizedRoom) -> Cells:
    return any_of(context.lattice, [covered(context.lattice, building) for building in context.buildings])


PART = Part(cells=_in_building)
