"""The foot of every flight keeps clear of seats and flames: the judge's to say; here is a guess of it at doors."""

import itertools
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue import SizedChoice, SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells, Lattice
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part
from optimizer.fields import SITES
from optimizer.grading import Foot, kept_clear, levelled
from optimizer.layout import Front, Layout, Placement, items_on_plan, placed_of
from optimizer.site import Site

Numbers = NDArray[np.float64]
Kept = tuple[tuple[float, ...], float]
"""Bounds of a seat or flame, and how far a foot keeps from it [ft]."""


@lru_cache(maxsize=SITES)
def _feet_at_doors(site: Site) -> tuple[Foot, ...]:
    """Feet of the steps that lead from doors to the ground, as long as no room meets them."""
    return tuple(flight.foot for flight in levelled(site, placed_of((), Layout(()))).flights)


def _at_a_doors_steps(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions whose seats or flames lie too near to the foot of a door's steps, whichever way the room faces and by
    either hand: furniture keeps its hand where a yard is mirrored, and a mirrored yard is to be the same problem.
    """
    feet, choice = _feet_at_doors(context.site), room.choices[variant.choice]
    if not feet or not any(map(kept_clear, choice.furniture)):
        return None
    ways = itertools.product(_fronts(room, variant), (choice, _other_hand(choice)))
    return np.asarray(
        np.logical_and.reduce(
            [_struck(context.lattice, _kept_boxes(context, room, variant, *way), feet) for way in ways]
        )
    )


def _other_hand(choice: SizedChoice) -> SizedChoice:
    """The choice with its furniture mirrored from left to right."""
    items = (replace(i, x_ft=choice.width_ft - i.x_ft - i.width_ft, turn_deg=-i.turn_deg) for i in choice.furniture)
    return replace(choice, furniture=tuple(items))


def _fronts(room: SizedRoom, variant: Variant) -> tuple[Front, ...]:
    """The variant's own front, or the two that its turn leaves open."""
    if variant.front is not None:
        return (variant.front,)
    choice = room.choices[variant.choice]
    is_turned = (variant.width > variant.depth) != (choice.width_ft > choice.depth_ft)
    return ("+x", "-x") if is_turned else ("+y", "-y")


def _struck(lattice: Lattice, kept: Iterable[Kept], feet: tuple[Foot, ...]) -> Cells:
    x = lattice.x_ft(0) + lattice.step_ft * np.arange(lattice.columns, dtype=np.float64)
    y = lattice.y_ft(0) + lattice.step_ft * np.arange(lattice.rows, dtype=np.float64)
    found = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    for ((left, low, right, top), clear_ft), foot in itertools.product(kept, feet):
        reach_ft = foot.width_ft / 2 + clear_ft
        near_x, near_y = _within(x, foot.at[0], left, right, reach_ft), _within(y, foot.at[1], low, top, reach_ft)
        at_x, at_y = x[None, near_x], y[near_y, None]
        found[near_y, near_x] |= _is_near(foot, clear_ft, at_x + left, at_y + low, at_x + right, at_y + top)
    return found


def _within(corners: Numbers, at: float, start: float, end: float, reach_ft: float) -> slice:
    """Corners from which what lies from `start` to `end` beyond them comes so near to a foot, along one axis."""
    return slice(*np.searchsorted(corners, (at - reach_ft - end, at + reach_ft - start)).tolist())


def _kept_boxes(
    context: Context, room: SizedRoom, variant: Variant, front: Front, choice: SizedChoice
) -> Iterator[Kept]:
    """Each seat and flame of a room that looks this way, from its lower left corner."""
    step_ft = context.lattice.step_ft
    stands = Placement(room.name, choice.label, 0.0, 0.0, variant.width * step_ft, variant.depth * step_ft, front)
    for item, ground in zip(choice.furniture, items_on_plan(stands, choice, choice.furniture), strict=True):
        kept = kept_clear(item)
        if kept is not None:
            yield ground.bounds, kept[1]


def _is_near(foot: Foot, clear_ft: float, left: Numbers, low: Numbers, right: Numbers, top: Numbers) -> Cells:
    """Whether boxes come nearer to the bottom riser than that, unless they lie above the steps; both along the axes."""
    (x, y), (up_x, up_y), half = foot.at, foot.going, foot.width_ft / 2
    reach_x, reach_y = half * abs(up_y), half * abs(up_x)
    off_x = np.maximum(np.maximum(left - (x + reach_x), (x - reach_x) - right), 0.0)
    off_y = np.maximum(np.maximum(low - (y + reach_y), (y - reach_y) - top), 0.0)
    begins = np.minimum((left - x) * up_x, (right - x) * up_x) + np.minimum((low - y) * up_y, (top - y) * up_y)
    return np.asarray((np.hypot(off_x, off_y) < clear_ft) & (begins < foot.run_ft))


PART = Part(doubts=_at_a_doors_steps)
