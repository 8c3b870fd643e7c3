"""Risers between the kitchen, its door and the table are the judge's to count; here is a guess of what it will say."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.catalogue.steps import step_rules
from optimizer.circulation import kitchen_door
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.levels import climb
from optimizer.engine.rules.part import Part


def _too_high(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions too many risers from the kitchen's door."""
    door = kitchen_door(context.scenario, room) if room.rules.kind == "kitchen" else None
    climbed = None if door is None else climb(context, door, variant)
    return None if climbed is None else np.asarray(climbed.risers > step_rules().kitchen_risers)


PART = Part(doubts=_too_high)
