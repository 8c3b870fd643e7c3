"""The outdoor kitchen is at most so far on foot from the kitchen door: here straight, the judge measures the way."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.circulation import kitchen_door, kitchen_walk_limit_ft
from optimizer.engine.grid.anchors import anchors_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part


def _near_enough(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    door = kitchen_door(context.scenario, room)
    limit_ft = kitchen_walk_limit_ft(context.scenario, room)
    if door is None or limit_ft is None:
        return None
    x, y = anchors_ft(context.lattice, variant)
    at = context.pose.point(door.at)
    return np.asarray(np.hypot(x - at[0], y - at[1]) <= limit_ft + 1e-6)


PART = Part(positions=_near_enough)
