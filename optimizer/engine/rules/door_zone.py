"""The landing and steps in front of every door stay free of rooms."""

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, covered
from optimizer.engine.rules.part import Part
from optimizer.fields import door_zone


def _in_door_zone(context: Context, _room: SizedRoom) -> Cells:
    zones = [door_zone(context.site, building, door) for building in context.site.buildings for door in building.doors]
    return any_of(context.lattice, [covered(context.lattice, zone) for zone in zones])


PART = Part(cells=_in_door_zone)
