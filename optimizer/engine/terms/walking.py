"""Trips as pulls: what each foot of walking between two places costs, on the straight way that the model knows."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from optimizer.brief import Trip
from optimizer.catalogue import rates
from optimizer.engine.grid.context import Context
from optimizer.engine.pairs import Gaps
from optimizer.engine.pairs.stamp import Cents, sum_along
from optimizer.engine.terms.term import CENTS, Term

if TYPE_CHECKING:
    from optimizer.engine.model.pair_model import Linear, PairModel

STRAIGHT_PER_RECTILINEAR: Final = math.pi / 4
"""Mean length of a straight line over its way along the axes, over all directions (integral geometry)."""
NAME = "walking"


@dataclass(frozen=True, slots=True)
class Pull:
    """Walking between a room's anchor and a point of the site: cents for each half step of |dx| + |dy|.

    `at` is in half steps from the grid's origin.
    """

    room: int
    at: tuple[int, int]
    rate: int


@dataclass(frozen=True, slots=True)
class Walking:
    """Walking between two rooms, from anchor to anchor: cents for each half step of |dx| + |dy|."""

    rate: int
    name: str = NAME
    reach: None = None
    in_model: bool = True

    def cents_along(self, gaps: Gaps) -> tuple[Cents, Cents]:
        """What each offset along x and along y costs."""
        (ax, ay), (bx, by) = gaps.first.anchor, gaps.second.anchor
        return self.rate * np.abs(2 * gaps.right + ax - bx), self.rate * np.abs(2 * gaps.up + ay - by)

    def cents(self, gaps: Gaps) -> Cents:
        """What every offset costs."""
        return sum_along(self.cents_along(gaps))

    def add_to(self, view: "PairModel") -> "Linear":
        """The two distances, with the floors that rooms side by side give them."""
        return self.rate * sum(view.distances())


def pulls_to_points(context: Context) -> tuple[Pull, ...]:
    """One pull a trip between a room and a door, entrance or other thing of the site."""
    index = {room.name: number for number, room in enumerate(context.rooms)}
    pulls = []
    for trip in context.scenario.brief.trips:
        rooms = [name for name in (trip.start, trip.end) if name in index]
        if len(rooms) == 1:
            other = trip.end if trip.start == rooms[0] else trip.start
            pulls.append(Pull(index[rooms[0]], _at(context, other), _rate(context, trip)))
    return tuple(pulls)


def _between_rooms(context: Context, first: int, second: int) -> Iterator[Walking]:
    names = {context.rooms[first].name, context.rooms[second].name}
    rate = sum(_rate(context, trip) for trip in context.scenario.brief.trips if {trip.start, trip.end} == names)
    if rate:
        yield Walking(rate)


def _rate(context: Context, trip: Trip) -> int:
    money_per_foot = rates().walking * context.scenario.brief.weights.walking * trip.count
    return round(CENTS * money_per_foot * STRAIGHT_PER_RECTILINEAR * context.lattice.step_ft / 2)


def _at(context: Context, name: str) -> tuple[int, int]:
    thing = context.thing(name)
    assert thing is not None, name
    lattice, point = context.lattice, thing.centroid
    return (
        round(2 * (point.x - lattice.x0_ft) / lattice.step_ft),
        round(2 * (point.y - lattice.y0_ft) / lattice.step_ft),
    )


TERM = Term(NAME, stamps=_between_rooms)
