"""Furniture of a placed room on the plan."""

from collections.abc import Sequence
from math import cos, radians, sin
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.catalogue import Item, SizedChoice
from optimizer.layout.placement import FRONT_VECTORS, Placement

_CORNERS: Final = np.array([(1, 0), (1, 1), (0, 1), (0, 0)])
"""Corners of an item, as shares of its width and depth, counter-clockwise."""


def items_on_plan(placement: Placement, choice: SizedChoice, items: Sequence[Item]) -> tuple[Polygon, ...]:
    """Ground of items [ft]: turned from the room's own axes about its middle, where the room's furniture stays."""
    if not items:
        return ()
    low = np.array([(item.x_ft - choice.width_ft / 2, item.y_ft - choice.depth_ft / 2) for item in items])
    high = low + np.array([(item.width_ft, item.depth_ft) for item in items])
    corners = np.where(_CORNERS, high[:, None], low[:, None])
    for number in (number for number, item in enumerate(items) if item.turn_deg):
        corners[number] = _turned(corners[number], (low[number] + high[number]) / 2, items[number].turn_deg)
    out_x, out_y = FRONT_VECTORS[placement.front]
    along, ahead = corners[..., 0], corners[..., 1]
    x = along * out_y + ahead * out_x + placement.centre[0]
    y = ahead * out_y - along * out_x + placement.centre[1]
    return tuple(shapely.polygons(np.stack([x, y], axis=-1)))


def _turned(corners: NDArray[np.float64], about: NDArray[np.float64], turn_deg: float) -> NDArray[np.float64]:
    cosine, sine = cos(radians(turn_deg)), sin(radians(turn_deg))
    return np.asarray((corners - about) @ np.array([(cosine, sine), (-sine, cosine)]) + about)
