"""Trips as pulls: what each foot of walking between two places costs."""

import math

from optimizer.catalogue import rates
from optimizer.instance.context import Context
from optimizer.instance.instance import Pull

CENTS = 100
STRAIGHT_PER_RECTILINEAR = math.pi / 4
"""Mean length of a straight line over its way along the axes, over all directions (integral geometry)."""


def pulls_of(context: Context) -> tuple[Pull, ...]:
    """One pull a trip that has a room at one end at least."""
    index = {room.name: number for number, room in enumerate(context.rooms)}
    pulls = []
    for trip in context.scenario.brief.trips:
        ends = sorted((trip.start, trip.end), key=lambda name: index.get(name, len(index)))
        if ends[0] in index:
            rate = _rate(context, trip.count)
            other = index.get(ends[1])
            pulls.append(Pull(index[ends[0]], other, None if other is not None else _at(context, ends[1]), rate))
    return tuple(pulls)


def _rate(context: Context, count: float) -> int:
    money_per_foot = rates().walking * context.scenario.brief.weights.walking * count
    return round(CENTS * money_per_foot * STRAIGHT_PER_RECTILINEAR * context.lattice.step_ft / 2)


def _at(context: Context, name: str) -> tuple[int, int]:
    thing = context.thing(name)
    assert thing is not None, name
    lattice, point = context.lattice, thing.centroid
    return (
        round(2 * (point.x - lattice.x0_ft) / lattice.step_ft),
        round(2 * (point.y - lattice.y0_ft) / lattice.step_ft),
    )
