"""Whether every placed room and every stop is joined by a clear way, on the grid: quick, and a shade stricter than
the judge where walls lie off the grid.
"""

import numpy as np
from scipy import ndimage

from optimizer.instance import Instance, Variant
from optimizer.instance.lattice import Cells, any_in_window
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.search.state import Spot, State


def is_connected(instance: Instance, state: State) -> bool:
    """Whether one connected part of the ground reaches everything."""
    grid = instance.reach
    if grid is None:
        return True
    free = grid.free.copy()
    placed = [(room, spot, instance.rooms[room].variants[spot.variant]) for room, spot in enumerate(state) if spot]
    for room, spot, variant in placed:
        if not instance.rooms[room].walkable:
            free[spot.y : spot.y + variant.depth, spot.x : spot.x + variant.width] = False
    ways = ~any_in_window(~free, width=grid.width, depth=grid.width)
    labels, _ = ndimage.label(ways)
    reached = [_labels(labels, low, high + 1, left, right + 1) for low, high, left, right in grid.stops]
    reached += [
        _around(labels, spot, variant, grid.width, walkable=instance.rooms[room].walkable)
        for room, spot, variant in placed
    ]
    return not reached or bool(set.intersection(*reached))


def _around(labels: np.ndarray, spot: Spot, variant: Variant, width: int, *, walkable: bool) -> set[int]:
    """Parts of the ground that enter the room on an open side, or lie in it where it can be walked on."""
    right, top = spot.x + variant.width - width + 1, spot.y + variant.depth - width + 1
    if walkable:
        inside = _labels(labels, spot.y, top, spot.x, right)
        if inside:
            return inside
    sides = {
        (0, -1): (spot.y - width, spot.y - width + 1, spot.x, right),
        (0, 1): (spot.y + variant.depth, spot.y + variant.depth + 1, spot.x, right),
        (-1, 0): (spot.y, top, spot.x - width, spot.x - width + 1),
        (1, 0): (spot.y, top, spot.x + variant.width, spot.x + variant.width + 1),
    }
    fronts = [FRONT_VECTORS[variant.front]] if variant.front else list(sides)
    return set().union(*(_labels(labels, *sides[front]) for front in fronts))


def _labels(labels: np.ndarray, low: int, high: int, left: int, right: int) -> set[int]:
    part: Cells = labels[max(0, low) : max(0, high), max(0, left) : max(0, right)]
    return set(np.unique(part).tolist()) - {0}
