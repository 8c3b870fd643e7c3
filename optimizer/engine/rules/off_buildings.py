"""No room stands in a building."""

from collections.abc import Iterator

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.rules.part import Part


def _in_building(context: Context, _room: SizedRoom) -> Iterator[KeptOff]:
    return map(KeptOff, context.buildings)


PART = Part(kept_off=_in_building)
