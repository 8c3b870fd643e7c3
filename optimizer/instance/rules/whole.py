"""Rules about a layout as a whole, and about the kitchen's way to its door."""

import numpy as np

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom
from optimizer.circulation import kitchen_door, kitchen_walk_limit_ft
from optimizer.instance.anchors import anchors_ft
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells
from optimizer.instance.rules.part import Part, limit
from optimizer.instance.variants import Variant


def _kitchen_walk(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions no farther, straight, than the way on foot may be long; the judge measures the way itself."""
    door = kitchen_door(context.scenario, room)
    limit_ft = kitchen_walk_limit_ft(context.scenario, room)
    if door is None or limit_ft is None:
        return None
    x, y = anchors_ft(context.lattice, variant)
    at = context.pose.point(door.at)
    return np.asarray(np.hypot(x - at[0], y - at[1]) <= limit_ft + 1e-6)


PARTS: dict[RuleId, Part] = {
    "required_rooms": limit("required"),
    "known_choice": limit("exact_sizes"),
    "proportion": limit("proportion"),
    "reachable": limit("reachable"),
    "budget": limit("ceiling"),
    "paved_share": limit("paved"),
    # Levels follow from all rooms and ways together: the judge alone says whether water gets away.
    "drains": Part(),
    "steps_clear": Part(),
    "kitchen_level": Part(),
    "ways_clear": Part(),
    "mown": Part(),
    "kitchen_walk": Part(positions=_kitchen_walk),
}
