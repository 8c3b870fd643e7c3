"""A mask as a few rectangles: how the solver sees where a room may stand, and what each place costs."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.lattice import Cells


@dataclass(frozen=True, slots=True)
class Zone:
    """Lower left corners from (`left`, `low`) to (`right`, `top`), ends included, none of which costs more than
    `loss` cents.
    """

    left: int
    right: int
    low: int
    top: int
    loss: int


def zones_of(allowed: Cells, losses: NDArray[np.int64]) -> tuple[Zone, ...]:
    """Rectangles that cover every allowed corner at exactly its loss.

    Level by level: the corners of a level are covered by rectangles of corners that cost no more. So the cheapest
    rectangle round a corner always carries that corner's own loss.
    """
    zones: list[Zone] = []
    levels = np.unique(losses[allowed])
    for level in levels:
        inside = allowed & (losses <= level)
        zones += _cover(allowed & (losses == level), inside, int(level))
    return tuple(zones)


def _cover(wanted: Cells, inside: Cells, loss: int) -> list[Zone]:
    left_to_cover = wanted.copy()
    zones = []
    for row, column in zip(*np.nonzero(wanted), strict=True):
        if left_to_cover[row, column]:
            zone = max(
                (_grown(inside, int(row), int(column), order, loss) for order in ((0, 1, 2, 3), (2, 3, 0, 1))),
                key=lambda z: left_to_cover[z.low : z.top + 1, z.left : z.right + 1].sum(),
            )
            left_to_cover[zone.low : zone.top + 1, zone.left : zone.right + 1] = False
            zones.append(zone)
    return zones


def _grown(inside: Cells, row: int, column: int, order: tuple[int, ...], loss: int) -> Zone:
    """The rectangle grown from one corner as far as it goes in each direction in turn."""
    low, top, left, right = row, row, column, column
    for direction in order:
        if direction == 0:
            while right + 1 < inside.shape[1] and inside[low : top + 1, right + 1].all():
                right += 1
        elif direction == 1:
            while left > 0 and inside[low : top + 1, left - 1].all():
                left -= 1
        elif direction == 2:
            while top + 1 < inside.shape[0] and inside[top + 1, left : right + 1].all():
                top += 1
        else:
            while low > 0 and inside[low - 1, left : right + 1].all():
                low -= 1
    return Zone(left, right, low, top, loss)


def cropped(zones: Iterable[Zone], open_: Cells) -> tuple[Zone, ...]:
    """Zones that hold all open corners of the given ones, each shrunk to what is open in it.

    Much sooner than making zones of the open corners anew; closed corners may be left in.
    """
    return tuple(zone for zone in (_cropped(zone, open_) for zone in zones) if zone is not None)


def _cropped(zone: Zone, open_: Cells) -> Zone | None:
    part = open_[zone.low : zone.top + 1, zone.left : zone.right + 1]
    rows, columns = np.flatnonzero(part.any(axis=1)), np.flatnonzero(part.any(axis=0))
    if not len(rows):
        return None
    low, top, left, right = int(rows[0]), int(rows[-1]), int(columns[0]), int(columns[-1])
    return Zone(zone.left + left, zone.left + right, zone.low + low, zone.low + top, zone.loss)
