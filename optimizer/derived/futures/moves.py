"""Moves of a vehicle on a lattice of poses, with the ground that each of them sweeps."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from math import acos, ceil, degrees, radians, sin, sqrt
from typing import Final

import numpy as np
import shapely

from optimizer.catalogue import Vehicle
from optimizer.derived.futures.sweep import Leg, Numbers, Pose, arc, poses_along, swept

HEADINGS: Final = 8
"""Headings of the lattice, from +x counter-clockwise, 45 degrees apart."""
SHIFTS_FT: Final = (1, 2, 4)
"""How far to the side a vehicle swings without another heading: two arcs, one after the other."""
GENTLE: Final = (1, 4)
"""The arcs are so many times as wide as the tightest: a gentle one swings the tail out less beside a wall."""
_HAIR: Final = 1e-9
_ROOT: Final = sqrt(0.5)


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
    poses = [start, *poses_along(start, legs)]
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


def _turned(move: Move, quarters: int) -> Move:
    """The same move from a heading so many right angles on."""
    matrix = np.linalg.matrix_power(np.array([(0, 1), (-1, 0)]), quarters)
    x, y = np.array(move.to) @ matrix
    heading = (move.heading + 2 * quarters) % HEADINGS
    past = tuple((int(x), int(y)) for x, y in np.array(move.past) @ matrix)
    poses = np.column_stack([move.poses[:, :2] @ matrix, move.poses[:, 2] + 90.0 * quarters])
    return replace(move, to=(int(x), int(y)), heading=heading, past=past, poses=poses, swept=move.swept @ matrix)
