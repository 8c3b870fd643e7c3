"""Whether every placed room and every stop is joined by a clear way, on the grid: quick, and a shade stricter than
the judge where walls lie off the grid.
"""

from functools import lru_cache

import numpy as np
from scipy import ndimage

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.problem import Problem, Spot, State
from optimizer.layout.placement import FRONT_VECTORS

_EVEN = 1e-6


def is_connected(problem: Problem, state: State) -> bool:
    """Whether one connected part of the ground reaches everything."""
    grid = problem.reach
    if grid is None:
        return True
    ways = grid.ways.copy()
    placed = [(room, spot, problem.rooms[room].variants[spot.variant]) for room, spot in enumerate(state) if spot]
    for room, spot, variant in placed:
        if not problem.rooms[room].walkable:
            _close(ways, spot, variant, grid.width)
    labels, _ = ndimage.label(ways)
    reached = [_labels(labels, low, high + 1, left, right + 1) for low, high, left, right in grid.stops]
    reached += [
        _around(labels, spot, variant, grid.width, walkable=problem.rooms[room].walkable)
        for room, spot, variant in placed
    ]
    return not reached or bool(set.intersection(*reached))


def _close(ways: Cells, spot: Spot, variant: Variant, width: int) -> None:
    """Take away the squares that a way cannot stand on, by their lower left cells, where a room stands."""
    low, left = spot.y - width + 1, spot.x - width + 1
    window = ways[max(0, low) : spot.y + variant.depth, max(0, left) : spot.x + variant.width]
    if variant.is_round:
        rows, columns = window.shape
        takes = _disc_takes(variant.width, width)[max(0, -low) :, max(0, -left) :]
        window &= ~takes[:rows, :columns]
    else:
        window[:] = False


@lru_cache(maxsize=32)
def _disc_takes(across: int, width: int) -> Cells:
    """Whether a circle so many cells across takes of a way's square, by the square's lower left cell, from the first
    that could meet the circle's own square.
    """
    low = np.arange(1 - width, across)
    off = np.maximum(0.0, np.maximum(low - across / 2, across / 2 - low - width))
    return np.asarray(np.hypot(off[None, :], off[:, None]) < across / 2 - _EVEN)


def _around(labels: np.ndarray, spot: Spot, variant: Variant, width: int, *, walkable: bool) -> set[int]:
    """Parts of the ground that enter the room on an open side, or lie in it where it can be walked on."""
    right, top = spot.x + variant.width - width + 1, spot.y + variant.depth - width + 1
    if walkable:
        inside = _labels(labels, spot.y, top, spot.x, right)
        if inside:
            return inside
    # Beside the middle of its side a circle's edge falls away.
    off = (variant.width - width) // 2 if variant.is_round else 0
    low, left, top, right = spot.y + off, spot.x + off, top - off, right - off
    sides = {
        (0, -1): (spot.y - width, spot.y - width + 1, left, right),
        (0, 1): (spot.y + variant.depth, spot.y + variant.depth + 1, left, right),
        (-1, 0): (low, top, spot.x - width, spot.x - width + 1),
        (1, 0): (low, top, spot.x + variant.width, spot.x + variant.width + 1),
    }
    fronts = [FRONT_VECTORS[variant.front]] if variant.front else list(sides)
    return set().union(*(_labels(labels, *sides[front]) for front in fronts))


def _labels(labels: np.ndarray, low: int, high: int, left: int, right: int) -> set[int]:
    part = labels[max(0, low) : max(0, high), max(0, left) : max(0, right)]
    return set(part.ravel().tolist()) - {0}
