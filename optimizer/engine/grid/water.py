"""Water within its deck on the grid: where it lies in a variant, and positions at which it stays off blocked cells."""

from functools import lru_cache
from math import ceil, floor
from typing import NamedTuple

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.lattice import SLACK, Cells, Lattice, any_in_window, shifted
from optimizer.engine.grid.variants import Variant
from optimizer.layout import Layout, Placement, placed_of


class Window(NamedTuple):
    """Part of a room in steps from its lower left corner."""

    left: int
    low: int
    width: int
    depth: int


def water_window(lattice: Lattice, room: SizedRoom, variant: Variant) -> Window:
    """Water of a variant, rounded outwards to whole steps; the whole of it where no water is drawn in a deck."""
    whole = Window(0, 0, variant.width, variant.depth)
    return _drawn(lattice.step_ft, room, variant) if room.rules.has_deck and variant.front else whole


@lru_cache(maxsize=256)
def _drawn(step_ft: float, room: SizedRoom, variant: Variant) -> Window:
    assert variant.front is not None
    choice, size = room.choices[variant.choice], (variant.width * step_ft, variant.depth * step_ft)
    stands = Placement(room.name, choice.label, 0.0, 0.0, *size, variant.front)
    bounds = placed_of((room,), Layout((stands,))).rooms[0].water.bounds
    left, low = (max(0, floor(edge / step_ft + SLACK)) for edge in bounds[:2])
    right, top = (ceil(edge / step_ft - SLACK) for edge in bounds[2:])
    return Window(left, low, min(right, variant.width) - left, min(top, variant.depth) - low)


def water_off(lattice: Lattice, room: SizedRoom, variant: Variant, blocked: Cells) -> Cells:
    """Positions of the room at which none of its water lies on a blocked cell."""
    water = water_window(lattice, room, variant)
    wet = any_in_window(blocked, width=water.width, depth=water.depth)
    return np.asarray(~shifted(wet, right=water.left, up=water.low, fill=True))
