"""Smoke of a fire at doors and windows that open; at seats it is in the score alone."""

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue import SizedRoom, rates
from optimizer.engine.grid.anchors import centres_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.terms.term import Money, Term, nowhere
from optimizer.fields import door_smoke, smoke_factor, smoke_source, wind_rose


def smoke_at_openings(
    context: Context, room: SizedRoom, variant: Variant, allowed: Cells
) -> NDArray[np.float64] | None:
    """Sum over doors and opening windows of the weighed share of the season that they lie in the room's smoke."""
    source = smoke_source(context.scenario.brief, room)
    if source is None or wind_rose(context.scenario.site) is None or not allowed.any():
        return None
    result = nowhere(context)
    posed = np.stack(centres_ft(context.lattice, variant), axis=-1)[allowed]
    # The wind knows the plan, not the pose.
    x, y = context.pose.back((posed[:, 0], posed[:, 1]))  # type: ignore[arg-type]
    result[allowed] = smoke_factor(source) * door_smoke(context.scenario.site, source, np.asarray(x), np.asarray(y))
    return result


def _smoke(context: Context, room: SizedRoom, variant: Variant, allowed: Cells) -> Money | None:
    shares = smoke_at_openings(context, room, variant, allowed)
    return None if shares is None else rates().smoke * context.scenario.brief.weights.smoke * shares


TERM = Term("smoke", place=_smoke)
