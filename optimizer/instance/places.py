"""What each place costs a room: hours of sun missed, smoke at openings, wishes towards things of the site not kept."""

import numpy as np
from numpy.typing import NDArray

from optimizer.brief import Weights
from optimizer.catalogue import FOCAL_KIND, SizedRoom, rates
from optimizer.fields import (
    across_contour_ft,
    door_smoke,
    off_axis,
    off_structure_ft,
    smoke_factor,
    smoke_source,
    wind_rose,
)
from optimizer.instance.anchors import centres_ft, corners_ft
from optimizer.instance.context import Context
from optimizer.instance.detours import detour_losses
from optimizer.instance.instance import Losses
from optimizer.instance.lattice import Cells
from optimizer.instance.rules.relations import ON_THING, thing_of
from optimizer.instance.sun import mean_hours
from optimizer.instance.variants import Variant
from optimizer.instance.wishes import wish_loss

CENTS = 100
LEVEL_CENTS = 20_000
_ROUNDING = 1e-6  # of sums that turn out just below a level in one pose and on it in another
"""Losses of places are counted in whole levels, rounded down: few zones for the solver, and still a floor."""


def place_losses(context: Context, room: SizedRoom, variant: Variant, allowed: Cells) -> Losses:
    """Hours of sun, smoke, detours, order, wishes towards things of the site not kept, at allowed positions [cents]."""
    losses = np.zeros((context.lattice.rows, context.lattice.columns))
    missed = _missed(context, room, variant)
    if missed is not None:
        losses[: missed.shape[0], : missed.shape[1]] += CENTS * rates().sun * _weights(context).sun * missed
    losses += CENTS * rates().smoke * _weights(context).smoke * smoke_at_openings(context, room, variant, allowed)
    losses[: allowed.shape[0], : allowed.shape[1]] += (
        CENTS * _weights(context).order * _order(context, room, variant, allowed)
    )
    losses += CENTS * detour_losses(context, room, variant)
    for relation in context.scenario.brief.relations:
        thing = None if relation.is_hard else thing_of(context, relation, room)
        if thing is not None:
            kept = ON_THING[relation.kind](context, relation, variant, thing, relation.between[0] == room.name)
            losses += np.where(kept, 0, wish_loss(context, relation))
    return np.asarray(np.floor(losses / LEVEL_CENTS + _ROUNDING) * LEVEL_CENTS, dtype=np.int64)


def smoke_at_openings(context: Context, room: SizedRoom, variant: Variant, allowed: Cells) -> NDArray[np.float64]:
    """Sum over doors and opening windows of the weighed share of the season that they lie in the room's smoke."""
    source = smoke_source(context.scenario.brief, room)
    result = np.zeros(allowed.shape)
    if source is not None and wind_rose(context.scenario.site) is not None and allowed.any():
        posed = np.stack(centres_ft(context.lattice, variant), axis=-1)[allowed]
        # The wind knows the plan, not the pose.
        plan = np.array([context.pose.back((float(x), float(y))) for x, y in posed])
        result[allowed] = smoke_factor(source) * door_smoke(context.scenario.site, source, plan[:, 0], plan[:, 1])
    return result


def _missed(context: Context, room: SizedRoom, variant: Variant) -> NDArray[np.float64] | None:
    sun, hours = room.sun, mean_hours(context, room, variant)
    if sun is None or hours is None:
        return None
    given = hours if sun.want == "sun" else sun.window_h - hours
    return np.maximum(0.0, sun.wished_h - given)


def _weights(context: Context) -> Weights:
    return context.scenario.brief.weights


def _order(context: Context, room: SizedRoom, variant: Variant, allowed: Cells) -> NDArray[np.float64]:
    """What each place alone does to the order of the plan, in money before weighing."""
    x, y = corners_ft(context.lattice, allowed.shape)
    size = {"width_ft": variant.width * context.lattice.step_ft, "depth_ft": variant.depth * context.lattice.step_ft}
    rate, site = rates(), context.site
    result = rate.off_structure * off_structure_ft(site, room.name, x, y, **size)
    result += rate.across_contour * across_contour_ft(site, x, y, **size)
    if room.rules.kind == FOCAL_KIND:
        result += rate.off_axis * off_axis(site, x, y, **size)
    return result
