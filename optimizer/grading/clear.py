"""What the foot of a flight keeps clear of: seats, where people push back, and flames."""

from collections.abc import Iterator
from math import hypot
from typing import Final, NamedTuple

import numpy as np
import shapely
from shapely import Polygon

from optimizer.catalogue import Item
from optimizer.catalogue.steps import step_rules
from optimizer.layout import Placed, Placement
from optimizer.site import Point

FLAMES: Final = ("fire pit", "grill", "griddle", "side burner", "pizza oven", "smoker")
"""Roles of furniture that burn."""
_EVEN: Final = 1e-6  # what rounding leaves of a length


class Foot(NamedTuple):
    """Bottom riser of a flight: its middle [ft], the way up as a unit vector, its width and the treads' length [ft]."""

    at: Point
    going: Point
    width_ft: float
    run_ft: float


class TooNear(NamedTuple):
    """A seat or flame of a room at which the foot of a flight stands, how far from it, and how far it should [ft]."""

    room: str
    what: str
    away_ft: float
    clear_ft: float

    @property
    def short_ft(self) -> float:
        """What lacks [ft]."""
        return self.clear_ft - self.away_ft


def too_near(placed: Placed, foot: Foot) -> TooNear | None:
    """What the foot stands too near to, of several the one from which most lacks; None where it is clear.

    What stands under the treads is at no distance. What lies above the top riser is on the upper level and hinders
    nobody at the foot.
    """
    near = _near(placed, foot)
    found = (TooNear(room, what, _away_ft(foot, ground), clear) for room, what, ground, clear in near)
    worst = max(found, key=lambda one: one.short_ft, default=None)
    return worst if worst is not None and worst.short_ft > _EVEN else None


def _near(placed: Placed, foot: Foot) -> Iterator[tuple[str, str, Polygon, float]]:
    """Seats and flames of the rooms that the foot may be too near to: room, word, ground and the distance to keep."""
    rules = step_rules()
    reach_ft = max(rules.foot_to_seat_ft, rules.foot_to_flame_ft) + foot.width_ft / 2 + foot.run_ft
    for room in placed:
        for item, ground in room.furniture if _distance_ft(room.placement, foot.at) <= reach_ft else ():
            kept = kept_clear(item)
            if kept is not None:
                yield room.name, kept[0], ground, kept[1]


def kept_clear(item: Item) -> tuple[str, float] | None:
    """Word for a seat or a flame and the distance that the foot keeps from it [ft]; None for anything else."""
    if item.role in FLAMES:
        return "flame", step_rules().foot_to_flame_ft
    return ("seat", step_rules().foot_to_seat_ft) if item.seats else None


def _distance_ft(room: Placement, at: Point) -> float:
    return hypot(max(room.x_ft - at[0], 0.0, at[0] - room.right_ft), max(room.y_ft - at[1], 0.0, at[1] - room.top_ft))


def _away_ft(foot: Foot, ground: Polygon) -> float:
    """Distance from the bottom riser to a piece of ground [ft], seen with the foot at (0, 0) and the way up as +y."""
    (x, y), (up_x, up_y), half = foot.at, foot.going, foot.width_ft / 2
    corners = (shapely.get_coordinates(ground) - (x, y)) @ np.array([[up_y, up_x], [0.0 - up_x, up_y]])
    if corners[:, 1].min() >= foot.run_ft - _EVEN:
        return float("inf")
    seen = Polygon(corners)
    treads = shapely.box(-half, 0.0, half, max(foot.run_ft, _EVEN))
    if shapely.relate_pattern(seen, treads, "T********"):
        return 0.0
    return float(seen.distance(shapely.LineString([(-half, 0.0), (half, 0.0)])))
