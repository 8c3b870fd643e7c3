"""The ground that a vehicle sweeps on straight legs and on arcs.

A vehicle is a rigid rectangle whose middle runs along straight legs and arcs of its turning radius R. In an arc its
inner side reaches to R - w / 2 from the centre of the turn and its outer corners to the square root of
(R + w / 2)^2 + (l / 2)^2, for width w and length l. Source: plane geometry of a rectangle that turns about a point.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, cos, hypot, radians, sin
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPoint, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import Vehicle

_STEP_DEG: Final = 3.0  # a chord so long cuts 0.0003 of the radius off its arc
_HAIR: Final = 1e-9

Pose = tuple[float, float, float]
"""Middle of the vehicle [ft], and its heading in degrees counter-clockwise from +x."""
Numbers = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Leg:
    """A straight stretch, or an arc where `turn_deg` is not 0: to the left if it is above 0. `run_ft` is its length."""

    run_ft: float
    turn_deg: float = 0.0


def arc(radius_ft: float, turn_deg: float) -> Leg:
    """An arc of this radius of the middle."""
    return Leg(radius_ft * radians(abs(turn_deg)), turn_deg)


def footprint(vehicle: Vehicle, pose: Pose) -> Numbers:
    """Corners of the ground under a vehicle [ft], counter-clockwise, as (4, 2)."""
    x, y, heading_deg = pose
    ahead = np.array([cos(radians(heading_deg)), sin(radians(heading_deg))])
    left, half, side = np.array([-ahead[1], ahead[0]]), vehicle.length_ft / 2, vehicle.width_ft / 2
    ends = [(half, -side), (half, side), (-half, side), (-half, -side)]
    return np.array([(x, y) + along * ahead + across * left for along, across in ends])


def poses_along(start: Pose, legs: Sequence[Leg]) -> Iterator[Pose]:
    """Poses along legs: the end of each straight one, and every few degrees of an arc."""
    x, y, heading_deg = start
    for leg in legs:
        if not leg.turn_deg:
            x, y = x + leg.run_ft * cos(radians(heading_deg)), y + leg.run_ft * sin(radians(heading_deg))
            yield (x, y, heading_deg)
            continue
        steps = ceil(abs(leg.turn_deg) / _STEP_DEG)
        turn_deg, chord_ft = leg.turn_deg / steps, _chord_ft(leg, steps)
        for _ in range(steps):
            along = radians(heading_deg + turn_deg / 2)
            x, y, heading_deg = x + chord_ft * cos(along), y + chord_ft * sin(along), heading_deg + turn_deg
            yield (x, y, heading_deg)


def _chord_ft(leg: Leg, steps: int) -> float:
    """Straight distance between two of the poses along an arc [ft]."""
    radius_ft = leg.run_ft / radians(abs(leg.turn_deg))
    return 2 * radius_ft * sin(radians(abs(leg.turn_deg)) / steps / 2)


def swept(vehicle: Vehicle, start: Pose, legs: Sequence[Leg]) -> Polygon:
    """Ground that a vehicle sweeps on legs and arcs from a pose [ft]."""
    return Polygon(_whole(swept_along(vehicle, [start, *poses_along(start, legs)])).exterior)


def swept_along(vehicle: Vehicle, poses: Iterable[Pose]) -> BaseGeometry:
    """Ground that a vehicle sweeps from pose to pose, each a few degrees or a straight stretch after the last [ft]."""
    return shapely.union_all([part for one, other in pairwise(poses) for part in _between(vehicle, one, other)])


def _between(vehicle: Vehicle, one: Pose, other: Pose) -> Iterator[BaseGeometry]:
    """Ground swept from a pose to the next: on a straight stretch all between the two; on an arc both, and between them
    the half away from the centre. What is between the inner halves is not swept, unless the centre lies under them.
    """
    ends = [footprint(vehicle, pose) for pose in (one, other)]
    turn_deg = (other[2] - one[2] + 180.0) % 360.0 - 180.0
    chord_ft = hypot(other[0] - one[0], other[1] - one[1])
    if abs(turn_deg) < _HAIR or chord_ft < vehicle.width_ft * sin(radians(abs(turn_deg)) / 2):
        yield MultiPoint(np.concatenate(ends)).convex_hull
        return
    yield from (Polygon(corners) for corners in ends)
    yield MultiPoint(np.concatenate([_outer(corners, turn_deg) for corners in ends])).convex_hull


def _outer(corners: Numbers, turn_deg: float) -> Numbers:
    """Corners of the half of a footprint that is away from the centre of a turn: the right one of a left turn."""
    front_right, front_left, back_left, back_right = corners
    front, back = (front_left + front_right) / 2, (back_left + back_right) / 2
    sides = (front_right, back_right) if turn_deg > 0 else (front_left, back_left)
    return np.array([*sides, front, back])


def _whole(ground: BaseGeometry) -> Polygon:
    """The one piece that parts which overlap make."""
    return max(shapely.get_parts(ground), key=lambda part: float(part.area))
