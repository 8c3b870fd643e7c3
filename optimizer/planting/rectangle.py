"""The largest rectangle in a piece of ground, along the axes of the plan."""

from math import ceil
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

Numbers = NDArray[np.float64]
_MOST_CELLS: Final = 1_000
_LEAST_STEP_FT: Final = 1.0
_SAME_FT: Final = 1e-3


def largest_rectangle(ground: Polygon) -> tuple[float, float]:
    """Long and short side of the largest rectangle along the axes [ft].

    Exact where all edges run along the axes; beside others to a step of 1 ft, or more where the ground is large.
    """
    x, y = _lines(ground)
    if min(len(x), len(y)) < 2:
        return (0.0, 0.0)
    left, low = np.meshgrid(x[:-1], y[:-1])
    right, top = np.meshgrid(x[1:], y[1:])
    shapely.prepare(ground)
    # A cell is inside or outside as a whole unless a slanting edge cuts it: shrunk a little, rounding cannot matter.
    cells = shapely.box(*(side.ravel() for side in (left + _SAME_FT, low + _SAME_FT, right - _SAME_FT, top - _SAME_FT)))
    inside = shapely.covers(ground, cells).reshape(left.shape)
    width, depth = _largest(inside, x, y)
    return (max(width, depth), min(width, depth))


def _lines(ground: Polygon) -> tuple[Numbers, Numbers]:
    """Lines along x and y at which a largest rectangle may end: edges of the ground, and steps where some slant."""
    ends = np.concatenate([_edges(np.asarray(ring.coords)) for ring in (ground.exterior, *ground.interiors)])
    upright = np.abs(ends[:, 0] - ends[:, 2]) < _SAME_FT
    level = np.abs(ends[:, 1] - ends[:, 3]) < _SAME_FT
    x, y = ends[upright, 0], ends[level, 1]
    if not np.all(upright | level):
        left, low, right, top = ground.bounds
        step = _LEAST_STEP_FT * max(1, ceil(((right - left) * (top - low) / _MOST_CELLS) ** 0.5))
        x, y = np.concatenate([x, _steps(left, right, step)]), np.concatenate([y, _steps(low, top, step)])
    return _distinct(x), _distinct(y)


def _steps(start: float, end: float, step: float) -> Numbers:
    """Steps from the middle to both ends, so that mirrored ground has the same."""
    half = np.arange(0.0, (end - start) / 2, step)
    return (start + end) / 2 + np.concatenate([-half[:0:-1], half])


def _edges(corners: Numbers) -> Numbers:
    return np.column_stack([corners[:-1, :2], corners[1:, :2]])


def _distinct(values: Numbers) -> Numbers:
    ordered = np.unique(values)
    return ordered[np.diff(ordered, prepend=-np.inf) > _SAME_FT]


def _largest(inside: NDArray[np.bool_], x: Numbers, y: Numbers) -> tuple[float, float]:
    """Width and depth of the largest block of cells that are inside: the largest under each row's histogram."""
    best, bottoms = (0.0, 0.0), np.full(inside.shape[1], y[0])
    above = np.vstack([inside[1:], np.zeros_like(inside[:1])])
    for row, top, next_row in zip(inside, y[1:], above, strict=True):
        heights = np.where(row, top - bottoms, 0.0)
        bottoms = np.where(row, bottoms, top)
        # Where all columns go on, what ends at this row is smaller than what goes on with it.
        if (row & ~next_row).any():
            best = max(best, _under(*_bars(heights, x)), key=lambda size: size[0] * size[1])
    return best


def _bars(heights: Numbers, x: Numbers) -> tuple[list[float], list[float]]:
    """A histogram with bars of one height side by side as one: heights, and where each begins and the last ends."""
    begins = np.flatnonzero(np.diff(heights, prepend=-1.0))
    return heights[begins].tolist(), [*x[begins].tolist(), float(x[-1])]


def _under(heights: list[float], x: list[float]) -> tuple[float, float]:
    """Width and depth of the largest rectangle under a histogram whose bars end at `x`, by a stack of rising bars."""
    best, rising = (0.0, 0.0), list[int]()
    for end, height in enumerate([*heights, 0.0]):
        while rising and heights[rising[-1]] >= height:
            depth = heights[rising.pop()]
            width = x[end] - x[rising[-1] + 1 if rising else 0]
            best = max(best, (width, depth), key=lambda size: size[0] * size[1])
        rising.append(end)
    return best
