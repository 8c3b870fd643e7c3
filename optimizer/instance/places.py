"""What each place costs a room: hours of sun missed, and wishes towards things of the site that are not kept."""

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue import SizedRoom, rates
from optimizer.fields import sun_hours
from optimizer.instance.context import Context
from optimizer.instance.instance import Losses
from optimizer.instance.lattice import window_sums
from optimizer.instance.rules.relations import ON_THING, thing_of
from optimizer.instance.variants import Variant
from optimizer.instance.wishes import wish_loss

CENTS = 100
LEVEL_CENTS = 20_000
"""Losses of places are counted in whole levels, rounded down: few zones for the solver, and still a floor."""


def place_losses(context: Context, room: SizedRoom, variant: Variant, hours: NDArray[np.float64] | None) -> Losses:
    """Sun hours missed and wishes towards things of the site that are not kept, at every position [cents]."""
    losses = np.zeros((context.lattice.rows, context.lattice.columns))
    if room.sun is not None and hours is not None:
        missed = _missed(hours, room, variant)
        losses[: missed.shape[0], : missed.shape[1]] += (
            CENTS * rates().sun * context.scenario.brief.weights.sun * missed
        )
    for relation in context.scenario.brief.relations:
        thing = None if relation.is_hard else thing_of(context, relation, room)
        if thing is not None:
            kept = ON_THING[relation.kind](context, relation, variant, thing, relation.between[0] == room.name)
            losses += np.where(kept, 0, wish_loss(context, relation))
    return np.asarray(np.floor(losses / LEVEL_CENTS) * LEVEL_CENTS, dtype=np.int64)


def cell_hours(context: Context, room: SizedRoom) -> NDArray[np.float64] | None:
    """Hours of direct sun in the middle of every cell, in the room's window; None without a wish."""
    if room.sun is None:
        return None
    lattice = context.lattice
    x = lattice.x0_ft + lattice.step_ft * (np.arange(lattice.columns) + 0.5)
    y = lattice.y0_ft + lattice.step_ft * (np.arange(lattice.rows) + 0.5)
    posed = np.stack([axis.ravel() for axis in np.meshgrid(x, y)], axis=1)
    plan = np.array([context.pose.back((float(a), float(b))) for a, b in posed])
    hours = sun_hours(context.scenario.site, plan, room.sun)
    return np.asarray(hours.reshape(lattice.rows, lattice.columns))


def _missed(hours: NDArray[np.float64], room: SizedRoom, variant: Variant) -> NDArray[np.float64]:
    sun = room.sun
    assert sun is not None
    mean = window_sums(hours, width=variant.width, depth=variant.depth) / (variant.width * variant.depth)
    return mean if sun.want == "shade" else (sun.to_h - sun.from_h) - mean
