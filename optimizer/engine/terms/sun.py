"""Hours of wished sun or shade that a room misses at each place, under its own roof where its choice has one."""

import numpy as np

from optimizer.catalogue import SizedRoom, rates
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.grid.variants import Variant
from optimizer.engine.terms.term import Money, Term, nowhere


def _missed(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money | None:
    sun, hours = room.sun, mean_hours(context, room, variant)
    if sun is None or hours is None:
        return None
    given = hours if sun.want == "sun" else sun.window_h - hours
    missed = nowhere(context)
    missed[: hours.shape[0], : hours.shape[1]] = np.maximum(0.0, sun.wished_h - given)
    return np.asarray(rates().sun * context.scenario.brief.weights.sun * missed)


TERM = Term("sun", place=_missed)
