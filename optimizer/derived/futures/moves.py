"""Moves of a vehicle on a lattice of poses, and the ground that each of them sweeps.

A vehicle is a rigid rectangle whose middle runs along straight legs and arcs of its turning radius R. In an arc its
inner side reaches to R - w / 2 from the centre of the turn and its outer corners to the square root of
(R + w / 2)^2 + (l / 2)^2, for width w and length l. Source: plane geometry of a rectangle that turns about a point.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise, product
from math import acos, ceil, cos, degrees, hypot, radians, sin, sqrt
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPoint, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import Vehicle

HEADINGS: Final = 8
"""Headings of the lattice, from +x counter-clockwise, 45 degrees apart."""
SHIFTS_FT: Final = (1, 2, 4)
"""How far to the side a vehicle swings without another heading: two arcs, one after the other."""
GENTLE: Final = (1, 4)
"""The arcs are so many times as wide as the tightest: a gentle one swings the tail out less beside a wall."""
_STEP_DEG: Final = 3.0  # a chord so long cuts 0.0003 of the radius off its arc
_HAIR: Final = 1e-9
_ROOT: Final = sqrt(0.5)

Pose = tuple[float, float, float]
"""Middle of the vehicle [ft], and its heading in degrees counter-clockwise from +x."""
Numbers = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Move:
    """From the origin in one heading to a lattice point in another: `length_ft` of way, lattice points that lie `past`
    it, the end among them, the poses that the vehicle runs through as (n, 3), and the corners of the swept ground.
    """

    to: tuple[int, int]
    heading: int
    length_ft: float
    turned_deg: float
    past: tuple[tuple[int, int], ...]
    poses: Numbers
    swept: Numbers


@lru_cache(maxsize=32)
def moves_of(vehicle: Vehicle) -> tuple[tuple[Move, ...], ...]:
    """Moves of a vehicle by the heading that they begin in: ahead, round a corner of 45 or 90 degrees, to the side."""
    straight = [_move(vehicle, 0, legs) for legs in _from_axis(vehicle.turning_radius_ft)]
    slanted = [_move(vehicle, 1, legs) for legs in _from_diagonal(vehicle.turning_radius_ft)]
    return tuple(
        tuple(_turned(move, quarters) for move in (slanted if heading % 2 else straight))
        for heading in range(HEADINGS)
        for quarters in (heading // 2,)
    )


def footprint(vehicle: Vehicle, pose: Pose) -> Numbers:
    """Corners of the ground under a vehicle [ft], counter-clockwise, as (4, 2)."""
    x, y, heading_deg = pose
    ahead = np.array([cos(radians(heading_deg)), sin(radians(heading_deg))])
    left, half, side = np.array([-ahead[1], ahead[0]]), vehicle.length_ft / 2, vehicle.width_ft / 2
    ends = [(half, -side), (half, side), (-half, side), (-half, -side)]
    return np.array([(x, y) + along * ahead + across * left for along, across in ends])


def swept(vehicle: Vehicle, start: Pose, legs: "Sequence[Leg]") -> Polygon:
    """Ground that a vehicle sweeps on legs and arcs from a pose [ft]."""
    return Polygon(_whole(swept_along(vehicle, [start, *_poses(start, legs)])).exterior)


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


@dataclass(frozen=True, slots=True)
class Leg:
    """A straight stretch, or an arc where `turn_deg` is not 0: to the left if it is above 0. `run_ft` is its length."""

    run_ft: float
    turn_deg: float = 0.0


def arc(radius_ft: float, turn_deg: float) -> Leg:
    """An arc of this radius of the middle."""
    return Leg(radius_ft * radians(abs(turn_deg)), turn_deg)


def _from_axis(radius_ft: float) -> Iterator[tuple[Leg, ...]]:
    """Legs from a lattice point to another, heading along an axis."""
    yield (Leg(1.0),)
    yield from (legs for side in (1, -1) for legs in _off_axis(radius_ft, side))
    for shift_ft, gentle in product(SHIFTS_FT, GENTLE):
        if shift_ft < 2 * gentle * radius_ft:
            yield from (_to_side(gentle * radius_ft, shift_ft, side) for side in (1, -1))


def _to_side(radius_ft: float, shift_ft: float, side: int) -> tuple[Leg, ...]:
    """Two arcs, one after the other, after which the vehicle heads as before."""
    bend_deg = side * degrees(acos(1 - shift_ft / (2 * radius_ft)))
    ahead_ft = 2 * radius_ft * sin(radians(abs(bend_deg)))
    return (arc(radius_ft, bend_deg), arc(radius_ft, -bend_deg), Leg(_up(ahead_ft) - ahead_ft))


def _off_axis(radius_ft: float, side: int) -> Iterator[tuple[Leg, ...]]:
    """Round a corner of 45 and one of 90 degrees, with what is driven straight to end on the lattice."""
    ahead_ft, beside_ft = radius_ft * _ROOT, radius_ft * (1 - _ROOT)
    slant_ft = _up(beside_ft) - beside_ft
    before_ft = _up(ahead_ft + slant_ft) - ahead_ft - slant_ft
    yield (Leg(before_ft), arc(radius_ft, 45.0 * side), Leg(slant_ft / _ROOT))
    rest = Leg(_up(radius_ft) - radius_ft)
    yield (rest, arc(radius_ft, 90.0 * side), rest)


def _from_diagonal(radius_ft: float) -> Iterator[tuple[Leg, ...]]:
    """The same, heading half-way between two axes."""
    yield (Leg(1 / _ROOT),)
    for side in (1, -1):
        ahead_ft, beside_ft = radius_ft * _ROOT, radius_ft * (1 - _ROOT)
        slant_ft = _up(beside_ft) - beside_ft
        after_ft = _up(ahead_ft + slant_ft) - ahead_ft - slant_ft
        yield (Leg(slant_ft / _ROOT), arc(radius_ft, 45.0 * side), Leg(after_ft))
        across_ft = radius_ft / _ROOT
        rest = Leg((_up(across_ft) - across_ft) * _ROOT)
        yield (rest, arc(radius_ft, 90.0 * side), rest)


def _up(length_ft: float) -> int:
    return ceil(length_ft - _HAIR)


def _move(vehicle: Vehicle, heading: int, legs: Sequence[Leg]) -> Move:
    start = (0.0, 0.0, 45.0 * heading)
    poses = [start, *_poses(start, legs)]
    x, y, end_deg = poses[-1]
    return Move(
        to=(round(x), round(y)),
        heading=round(end_deg / 45.0) % HEADINGS,
        length_ft=sum(leg.run_ft for leg in legs),
        turned_deg=sum(abs(leg.turn_deg) for leg in legs),
        past=tuple((round(x), round(y)) for x, y, _ in _parts(poses)),
        poses=np.array(poses),
        swept=shapely.get_coordinates(swept(vehicle, start, legs)),
    )


def _parts(poses: Sequence[Pose]) -> Sequence[Pose]:
    """Poses after a third and two thirds of the others, and the last."""
    last = len(poses) - 1
    return [poses[number] for number in dict.fromkeys((last // 3, 2 * last // 3, last)) if number]


def _poses(start: Pose, legs: Sequence[Leg]) -> Iterator[Pose]:
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


def _turned(move: Move, quarters: int) -> Move:
    """The same move from a heading so many right angles on."""
    matrix = np.linalg.matrix_power(np.array([(0, 1), (-1, 0)]), quarters)
    x, y = np.array(move.to) @ matrix
    heading = (move.heading + 2 * quarters) % HEADINGS
    past = tuple((int(x), int(y)) for x, y in np.array(move.past) @ matrix)
    poses = np.column_stack([move.poses[:, :2] @ matrix, move.poses[:, 2] + 90.0 * quarters])
    return replace(move, to=(int(x), int(y)), heading=heading, past=past, poses=poses, swept=move.swept @ matrix)


def _whole(ground: BaseGeometry) -> Polygon:
    """The one piece that parts which overlap make."""
    return max(shapely.get_parts(ground), key=lambda part: float(part.area))


def outer_reach_ft(vehicle: Vehicle) -> float:
    """How far the outer corners reach from the centre of a turn [ft]."""
    return hypot(vehicle.turning_radius_ft + vehicle.width_ft / 2, vehicle.length_ft / 2)
