"""A room gets at least the hours of sun or shade the brief insists on, under its own roof; the judge knows others."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part

_TOLERANCE_H = 0.05


def _sunny_enough(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions with the least hours."""
    sun = room.sun
    hours = None if sun is None or sun.least_hours is None else mean_hours(context, room, variant)
    if sun is None or sun.least_hours is None or hours is None:
        return None
    given = hours if sun.want == "sun" else sun.window_h - hours
    allowed = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    allowed[: hours.shape[0], : hours.shape[1]] = given >= sun.least_hours - _TOLERANCE_H
    return allowed


PART = Part(positions=_sunny_enough)
