"""The way asked for has no steps: levels and ways are the judge's; here is a guess of where it will refuse."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.levels import climb
from optimizer.engine.rules.part import Part


def _too_steep(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions to which no ramp from the door has room."""
    doors = {door.name: door for door in context.scenario.site.doors}
    found = [
        ~climbed.is_accessible
        for relation in context.scenario.brief.relations
        if relation.kind == "accessible" and relation.is_hard and room.name in relation.between
        for end in relation.between
        if end in doors and (climbed := climb(context, doors[end], variant)) is not None
    ]
    return np.logical_or.reduce(found) if found else None


PART = Part(doubts=_too_steep)
