"""Rule about the hours of sun or shade without which a room is none."""

import numpy as np

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells
from optimizer.instance.rules.part import Part
from optimizer.instance.sun import mean_hours
from optimizer.instance.variants import Variant

TOLERANCE_H = 0.05


def _sunny_enough(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions with the least hours, under the room's own roof if it has one; others' roofs are the judge's."""
    sun = room.sun
    hours = None if sun is None or sun.least_hours is None else mean_hours(context, room, variant)
    if sun is None or sun.least_hours is None or hours is None:
        return None
    given = hours if sun.want == "sun" else sun.window_h - hours
    allowed = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    allowed[: hours.shape[0], : hours.shape[1]] = given >= sun.least_hours - TOLERANCE_H
    return allowed


PARTS: dict[RuleId, Part] = {"sun_least": Part(positions=_sunny_enough)}
