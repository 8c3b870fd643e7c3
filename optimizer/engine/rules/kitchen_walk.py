"""The outdoor kitchen is at most so far on foot from the kitchen door: here straight, the judge measures the way."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.circulation import kitchen_door, kitchen_walk_limit_ft
from optimizer.engine.grid.anchors import anchors_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.walked_round import is_far_round
from optimizer.engine.rules.part import Part
from optimizer.site import Point


def _door_and_limit(context: Context, room: SizedRoom) -> tuple[Point, float] | None:
    """Posed door of a kitchen and its distance at most [ft]; None where nothing is asked."""
    door, limit_ft = kitchen_door(context.scenario, room), kitchen_walk_limit_ft(context.scenario, room)
    return None if door is None or limit_ft is None else (context.pose.point(door.at), limit_ft)


def _near_enough(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    asked = _door_and_limit(context, room)
    if asked is None:
        return None
    (door_x, door_y), limit_ft = asked
    x, y = anchors_ft(context.lattice, variant)
    return np.asarray(np.hypot(x - door_x, y - door_y) <= limit_ft + 1e-6)


def _far_round(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions that the judge will likely find too far on foot."""
    asked = _door_and_limit(context, room)
    return None if asked is None else is_far_round(context, asked[0], variant, asked[1])


PART = Part(positions=_near_enough, doubts=_far_round)
