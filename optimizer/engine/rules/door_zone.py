"""The landing and steps in front of every door stay free of rooms."""

from collections.abc import Iterator

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.rules.part import Part
from optimizer.fields import door_zone


def _in_door_zone(context: Context, _room: SizedRoom) -> Iterator[KeptOff]:
    buildings = context.site.buildings
    return (KeptOff(door_zone(context.site, building, door)) for building in buildings for door in building.doors)


PART = Part(kept_off=_in_door_zone)
