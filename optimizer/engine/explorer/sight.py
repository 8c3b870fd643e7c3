"""Which places of a room keep a look to another room that stands: asked of the cheapest places only."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.sight_shares import centres_at, extent_of, eyes, panel_of, shares_of_room
from optimizer.engine.pairs import Ask
from optimizer.engine.problem import Problem, Spot

_MOST_KEPT: Final = 500
"""So many tables of shares are kept; a tour comes back to the same few spots."""


@dataclass(frozen=True, slots=True)
class Sighting:
    """A look that is asked of a room that moves in some variant, towards one that stands at a spot."""

    ask: Ask
    moving: tuple[int, int]
    """Room and variant."""
    other: int
    spot: Spot
    moving_looks: bool


def sightings(problem: Problem, room: int, variant: int, others: list[tuple[int, Spot]]) -> list[Sighting]:
    """Looks between a room and those that stand."""
    return [
        Sighting(ask, (room, variant), other, spot, moving_looks=ask.view.looks == (0 if room < other else 1))
        for other, spot in others
        for ask in problem.pair(room, other).asks
    ]


def loss_of_sight(
    problem: Problem, sighting: Sighting, xs: NDArray[np.int64], ys: NDArray[np.int64]
) -> NDArray[np.int64]:
    """Loss of the look at these corners of the moving room [cents].

    The site's screens hide, and the panel of a screened room; what else the layout puts between, the judge knows.
    """
    table = _table(problem, sighting)
    unknown = np.isnan(table[ys, xs])
    if unknown.any():
        table[ys[unknown], xs[unknown]] = _shares(problem, sighting, xs[unknown], ys[unknown])
    return np.where(sighting.ask.view.look.keeps(table[ys, xs]), 0, np.int64(sighting.ask.loss))


def _table(problem: Problem, sighting: Sighting) -> NDArray[np.float64]:
    """Shares over the whole grid that are known already; NaN where none was asked for."""
    lattice, known = problem.context.lattice, problem.context.known_shares
    (room, v), spot = sighting.moving, sighting.spot
    both = problem.rooms[room].variants[v], problem.rooms[sighting.other].variants[spot.variant]
    shapes = tuple(extent_of(variant) for variant in both)
    key = (sighting.ask.view, sighting.moving_looks, shapes, spot.x, spot.y, _has_panel(problem, sighting))
    table = known.get(key)
    if table is None:
        if len(known) >= _MOST_KEPT:
            known.clear()
        table = known[key] = np.full((lattice.rows, lattice.columns), np.nan)
    return table


def _shares(problem: Problem, sighting: Sighting, xs: NDArray[np.int64], ys: NDArray[np.int64]) -> NDArray[np.float64]:
    context, look, spot = problem.context, sighting.ask.view.look, sighting.spot
    (room, v), placed = sighting.moving, problem.rooms[sighting.other].variants[spot.variant]
    variant = problem.rooms[room].variants[v]
    moving = centres_at(context, extent_of(variant), xs, ys)
    standing = centres_at(context, extent_of(placed), np.array([spot.x]), np.array([spot.y]))
    looking, seen = (moving, standing) if sighting.moving_looks else (standing, moving)
    shown = placed if sighting.moving_looks else variant
    panel = panel_of(context, look) if _has_panel(problem, sighting) else None
    return shares_of_room(context, look, eyes(context, look, looking), (seen, extent_of(shown)), panel=panel)


def _has_panel(problem: Problem, sighting: Sighting) -> bool:
    """Whether the room that is looked at has a panel round it."""
    room, v = (sighting.other, sighting.spot.variant) if sighting.moving_looks else sighting.moving
    return problem.context.rooms[room].choices[problem.rooms[room].variants[v].choice].is_screened
