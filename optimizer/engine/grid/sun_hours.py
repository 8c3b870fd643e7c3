"""Hours of direct sun that a room gets at every position, under its own roof where its choice has one."""

from functools import lru_cache
from math import ceil, floor, sqrt

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import window_sums
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_window
from optimizer.fields import Moment, moments_of

Hours = NDArray[np.float64]


def mean_hours(context: Context, room: SizedRoom, variant: Variant) -> Hours | None:
    """Mean hours over the room, or over its water, at each lower left corner where it lies on the grid; None without a
    wish.

    The roof's shadow is taken as on level ground; the appraisal takes it on the real ground.
    """
    if room.sun is None:
        return None
    moments, water = _moments(context, room), water_window(context.lattice, room, variant)
    lit = sum((m.hours * m.lit for m in moments), np.zeros(_shape(context)))
    if variant.is_round:
        return _disc_mean(lit, variant.width)
    size = {"width": water.width, "depth": water.depth}
    sums = window_sums(lit, **size)
    rows, columns = (n - m + 1 for n, m in zip(_shape(context), (variant.depth, variant.width), strict=True))
    hours = sums[water.low : water.low + max(0, rows), water.left : water.left + max(0, columns)]
    cover = room.choices[variant.choice].cover
    if cover is not None:
        for moment in moments:
            hours = hours - moment.hours * cover.share * _under(context, variant, moment, cover.height_ft)
    return np.asarray(hours / (water.width * water.depth))


def _disc_mean(table: Hours, across: int) -> Hours:
    """Mean over the cells whose middles lie in a circle so many steps across, at each lower left corner."""
    rows, columns = (max(0, size - across + 1) for size in table.shape)
    total, count, sums = np.zeros((rows, columns)), 0, np.pad(table.cumsum(axis=1), ((0, 0), (1, 0)))
    for row in range(across if rows and columns else 0):
        half = sqrt((across / 2) ** 2 - (row + 0.5 - across / 2) ** 2)
        low, high = ceil(across / 2 - half - 0.5), floor(across / 2 + half - 0.5) + 1
        total += sums[row : row + rows, high : high + columns] - sums[row : row + rows, low : low + columns]
        count += high - low
    return total / max(1, count)


def _under(context: Context, variant: Variant, moment: Moment, height_ft: float) -> Hours:
    """Sum of the sun over the cells of the room that lie in its own roof's shadow, at each position."""
    step = context.lattice.step_ft
    spans = [
        _span(size, shift * height_ft / step)
        for size, shift in zip((variant.width, variant.depth), moment.away, strict=True)
    ]
    (left, width), (low, depth) = spans
    rows, columns = _shape(context)
    result = np.zeros((rows - variant.depth + 1, columns - variant.width + 1))
    if width > 0 and depth > 0:
        sums = window_sums(moment.lit, width=width, depth=depth)
        result += sums[low : low + result.shape[0], left : left + result.shape[1]]
    return result


def _span(size: int, shift: float) -> tuple[int, int]:
    """First cell and count of the cells whose middles lie both in a side and in the same side shifted, in steps."""
    low, high = max(0.0, shift), min(float(size), size + shift)
    first, last = int(np.ceil(low - 0.5)), int(np.ceil(high - 0.5))
    return first, max(0, last - first)


@lru_cache(maxsize=8)
def _moments(context: Context, room: SizedRoom) -> tuple[Moment, ...]:
    """Moments of the room's window with what reaches the middle of every cell, on the grid, in the pose's axes."""
    assert room.sun is not None
    lattice, pose = context.lattice, context.pose
    x = lattice.x0_ft + lattice.step_ft * (np.arange(lattice.columns) + 0.5)
    y = lattice.y0_ft + lattice.step_ft * (np.arange(lattice.rows) + 0.5)
    posed = np.stack([axis.ravel() for axis in np.meshgrid(x, y)], axis=1)
    plan = np.array([pose.back((float(a), float(b))) for a, b in posed])
    origin = pose.point((0.0, 0.0))
    result = []
    for moment in moments_of(context.scenario.site, plan, room.sun):
        end = pose.point(moment.away)
        away = (end[0] - origin[0], end[1] - origin[1])
        result.append(Moment(moment.hours, away, moment.lit.reshape(_shape(context))))
    return tuple(result)


def _shape(context: Context) -> tuple[int, int]:
    return context.lattice.rows, context.lattice.columns
