"""The foot of every flight keeps clear of seats and flames: the judge's to say; here is a guess of it at doors."""

from collections.abc import Iterator
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part
from optimizer.fields import SITES
from optimizer.grading import Foot, kept_clear, levelled
from optimizer.layout import Front, Layout, Placement, items_on_plan, placed_of
from optimizer.site import Site

Numbers = NDArray[np.float64]


@lru_cache(maxsize=SITES)
def _feet_at_doors(site: Site) -> tuple[Foot, ...]:
    """Feet of the steps that lead from doors to the ground, as long as no room meets them."""
    return tuple(flight.foot for flight in levelled(site, placed_of((), Layout(()))).flights)


def _at_a_doors_steps(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions whose seats or flames lie too near to the foot of a door's steps, whichever way the room faces."""
    feet = _feet_at_doors(context.site)
    if not feet or not any(map(kept_clear, room.choices[variant.choice].furniture)):
        return None
    struck = [_struck(context, room, variant, front, feet) for front in _fronts(room, variant)]
    return np.asarray(np.logical_and.reduce(struck))


def _fronts(room: SizedRoom, variant: Variant) -> tuple[Front, ...]:
    """The variant's own front, or the two that its turn leaves open."""
    if variant.front is not None:
        return (variant.front,)
    choice = room.choices[variant.choice]
    is_turned = (variant.width > variant.depth) != (choice.width_ft > choice.depth_ft)
    return ("+x", "-x") if is_turned else ("+y", "-y")


def _struck(context: Context, room: SizedRoom, variant: Variant, front: Front, feet: tuple[Foot, ...]) -> Cells:
    lattice = context.lattice
    x = lattice.x_ft(0) + lattice.step_ft * np.arange(lattice.columns, dtype=np.float64)
    y = lattice.y_ft(0) + lattice.step_ft * np.arange(lattice.rows, dtype=np.float64)
    found = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    for (left, low, right, top), clear_ft in _kept_boxes(context, room, variant, front):
        for foot in feet:
            reach_ft = foot.width_ft / 2 + clear_ft
            near_x, near_y = _within(x, foot.at[0], left, right, reach_ft), _within(y, foot.at[1], low, top, reach_ft)
            at_x, at_y = x[None, near_x], y[near_y, None]
            found[near_y, near_x] |= _is_near(foot, clear_ft, at_x + left, at_y + low, at_x + right, at_y + top)
    return found


def _within(corners: Numbers, at: float, start: float, end: float, reach_ft: float) -> slice:
    """Corners from which what lies from `start` to `end` beyond them comes so near to a foot, along one axis."""
    return slice(*np.searchsorted(corners, (at - reach_ft - end, at + reach_ft - start)).tolist())


def _kept_boxes(
    context: Context, room: SizedRoom, variant: Variant, front: Front
) -> Iterator[tuple[tuple[float, ...], float]]:
    """Posed bounds of each seat and flame from the room's lower left corner, and how far a foot keeps from it [ft]."""
    choice, step_ft = room.choices[variant.choice], context.lattice.step_ft
    posed = Placement(room.name, choice.label, 0.0, 0.0, variant.width * step_ft, variant.depth * step_ft, front)
    # Furnished on the plan: in a pose that mirrors the yard furniture lies mirrored too.
    on_plan = context.pose.layout_back(Layout((posed,))).placements[0]
    for item, ground in zip(choice.furniture, items_on_plan(on_plan, choice, choice.furniture), strict=True):
        kept = kept_clear(item)
        if kept is not None:
            corners = tuple(map(context.pose.point, ground.exterior.coords))
            yield Polygon(corners).bounds, kept[1]


def _is_near(foot: Foot, clear_ft: float, left: Numbers, low: Numbers, right: Numbers, top: Numbers) -> Cells:
    """Whether boxes come nearer to the bottom riser than that, unless they lie above the steps; both along the axes."""
    (x, y), (up_x, up_y), half = foot.at, foot.going, foot.width_ft / 2
    reach_x, reach_y = half * abs(up_y), half * abs(up_x)
    off_x = np.maximum(np.maximum(left - (x + reach_x), (x - reach_x) - right), 0.0)
    off_y = np.maximum(np.maximum(low - (y + reach_y), (y - reach_y) - top), 0.0)
    begins = np.minimum((left - x) * up_x, (right - x) * up_x) + np.minimum((low - y) * up_y, (top - y) * up_y)
    return np.asarray((np.hypot(off_x, off_y) < clear_ft) & (begins < foot.run_ft))


PART = Part(doubts=_at_a_doors_steps)
