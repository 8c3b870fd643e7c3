"""What walking from a door or entrance costs more than the model's straight pull, since buildings stand in the way."""

import numpy as np

from optimizer.catalogue import SizedRoom, rates
from optimizer.engine.grid.anchors import anchors_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.walked import SLACK_FT, walked_ft
from optimizer.engine.terms.term import Money, Term
from optimizer.engine.terms.walking import STRAIGHT_PER_RECTILINEAR


def _detours(context: Context, room: SizedRoom, variant: Variant, _allowed: Cells) -> Money:
    """Money of the walking that a place adds to the straight pulls of its trips, at each lower left corner.

    Ways lead round buildings and kept-out ground in steps of 45 degrees, as paved ones do, and rooms are left out: so
    pull and detour together are no more than the way itself.
    """
    x, y = anchors_ft(context.lattice, variant)
    result = np.zeros(x.shape)
    for trip in context.scenario.brief.trips:
        if room.name in (trip.start, trip.end):
            other = trip.end if trip.start == room.name else trip.start
            at = context.site.point_of(other)
            if at is not None:
                straight = STRAIGHT_PER_RECTILINEAR * (np.abs(x - at[0]) + np.abs(y - at[1]))
                longer = walked_ft(context, at, x, y) - SLACK_FT - straight
                result += trip.count * np.where(np.isfinite(longer), np.maximum(0.0, longer), 0.0)
    return rates().walking * context.scenario.brief.weights.walking * result


TERM = Term("detours", place=_detours)
