"""A way for a vehicle: the best first over poses of a lattice, each move checked by sweeping the vehicle (A*)."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from heapq import heappop, heappush
from itertools import count
from math import cos, floor, hypot, radians, sin
from typing import Final, cast

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.derived.futures.course import STEP_FT, Course, Gate, Numbers
from optimizer.derived.futures.moves import HEADINGS, Move, moves_of
from optimizer.layout import TOLERANCE_FT
from optimizer.site import Point

MOST_POSES: Final = 8_000
"""Poses that are looked at, a third of a second at the most. Of the ways that were found on the yards tried all but one
were after fewer; that one, for a cart, is a way of a digger's too.
"""
_INTO_FT: Final = 1.0  # a vehicle has come to ground that its front reaches so far into; common practice, no source
_TURN_FT: Final = 0.15
"""Feet that a driver would rather drive than turn by a degree; common practice, no source."""
_AHEAD: Final = 0.7  # cosine: a vehicle comes in within 45 degrees of straight

_EAGER: Final = 1.25
"""What is left to go counts so much more than what was driven: a way up to so much longer is found much sooner."""
_HAIR: Final = 1e-6

Place = tuple[int, int, int]
"""Column, row and heading."""
Step = tuple[Place, Move]
"""Where a move begins, and the move."""


@dataclass(frozen=True, slots=True, eq=False)
class Drive:
    """A way that a vehicle can take: its poses as (n, 3) [ft, degrees], and its steepest move as rise per run."""

    gate: str
    poses: Numbers
    steepest: float


@dataclass(frozen=True, slots=True, eq=False)
class Stuck:
    """How far a vehicle comes that finds no way: to `left_ft` of the goal, and the ground that it would sweep on from
    there but may not; both are nothing where no pose is free at all. `at` is its middle there.
    """

    left_ft: float
    blocked: tuple[BaseGeometry, ...] = ()
    at: Point | None = None


def drive(course: Course) -> Drive | Stuck:
    """A way in, near to the best, or how far the vehicle comes where none was found.

    A way begins outside a gate and ends where the vehicle's front reaches into the goal. All ground that is swept lies
    in the course's ground; the touching tolerance is left to either side. No move is steeper than the vehicle takes.
    """
    if not np.isfinite(course.to_go_ft).any():
        return Stuck(np.inf)
    return _Search(course).found()


class _Search:
    def __init__(self, course: Course) -> None:
        self.course = course
        tight = course.vehicle.width_ft - 2 * TOLERANCE_FT, course.vehicle.length_ft - 2 * TOLERANCE_FT
        self.vehicle = replace(course.vehicle, width_ft=tight[0], length_ft=tight[1])
        self.moves = moves_of(self.vehicle)
        self.to_go = _rows(course.to_go_ft)
        self.columns, self.rows = course.open.shape
        self.open = [_open_to(course, heading).tolist() for heading in range(HEADINGS)]
        flat = course.places.reshape(-1, 2)
        shape = course.open.shape
        self.z, self.is_level = _rows(course.levels_ft), course.steepest <= self.vehicle.steepest
        self.rough = _rows(course.rough(flat).reshape(shape))
        self.came: dict[Place, Step | None] = {}
        self.gates: dict[Place, str] = {}
        self.queue: list[tuple[float, float, int, Place, Step | None]] = []
        self.number = count()
        shapely.prepare(course.ground)

    def found(self) -> Drive | Stuck:
        for gate in self.course.gates:
            for place in _starts(self.course, gate):
                self.gates.setdefault(place, gate.name)
                self._push(0.0, place, None)
        while self.queue and len(self.came) < MOST_POSES:
            _, spent, _, place, step = heappop(self.queue)
            if place in self.came or not self._is_free(step):
                continue
            self.came[place] = step
            if self._arrives(place):
                return self._way_to(place)
            self._go_on(place, spent)
        return self._stuck()

    def _go_on(self, place: Place, spent: float) -> None:
        """Put every pose that a move leads to into the queue; a dearer way to one too, since whether the cheaper one is
        free shows only when its turn comes.
        """
        for move in self.moves[place[2]]:
            end = (place[0] + move.to[0], place[1] + move.to[1], move.heading)
            if end not in self.came and self._may_end(end) and not self._is_steep(place, end, move):
                rough = sum(self._rough(place[0] + x, place[1] + y) for x, y in move.past) / len(move.past)
                self._push(spent + move.length_ft * rough + _TURN_FT * move.turned_deg, end, (place, move))

    def _rough(self, x: int, y: int) -> float:
        # The middle of a wide turn may leave the lattice; whether its ground is free shows when its turn comes.
        return float(self.rough[min(max(x, 0), self.columns - 1)][min(max(y, 0), self.rows - 1)])

    def _push(self, spent: float, place: Place, step: Step | None) -> None:
        heappush(self.queue, (spent + self._left(place), spent, next(self.number), place, step))

    def _left(self, place: Place) -> float:
        return _EAGER * max(0.0, self.to_go[place[0]][place[1]] - self.vehicle.length_ft / 2)

    def _may_end(self, end: Place) -> bool:
        """Whether middle, front and back may be at the end of a move."""
        x, y, heading = end
        return bool(0 <= x < self.columns and 0 <= y < self.rows and self.open[heading][x][y])

    def _is_steep(self, place: Place, end: Place, move: Move) -> bool:
        """Whether a move is too steep from its beginning to its end, and so somewhere on it."""
        if self.is_level:
            return False
        rise_ft = abs(self.z[end[0]][end[1]] - self.z[place[0]][place[1]])
        return rise_ft > self.vehicle.steepest * move.length_ft + _HAIR

    def _is_free(self, step: Step | None) -> bool:
        """Whether a move sweeps free ground only, and is nowhere steeper than the vehicle takes."""
        if step is None:
            return True
        if not shapely.covers(self.course.ground, self._sweep(*step)):
            return False
        return bool(self.is_level or _grade(self.course, self._poses(step)) <= self.vehicle.steepest + _HAIR)

    def _sweep(self, place: Place, move: Move) -> Polygon:
        # Much quicker than making a Polygon, which is what comes of it.
        return cast("Polygon", shapely.polygons(move.swept + self.course.places[place[0], place[1]]))

    def _arrives(self, place: Place) -> bool:
        x, y = self.course.places[place[0], place[1]]
        reach_ft, turn = self.vehicle.length_ft / 2 - _INTO_FT, radians(360 / HEADINGS * place[2])
        left, low, right, top = self.course.goal.bounds
        return bool(left <= x + reach_ft * cos(turn) <= right and low <= y + reach_ft * sin(turn) <= top)

    def _way_to(self, place: Place) -> Drive:
        steps = [*self._steps_to(place)][::-1]
        poses = np.concatenate([*map(self._poses, steps)])
        return Drive(self.gates[steps[0][0]], poses, _grade(self.course, poses))

    def _poses(self, step: Step) -> Numbers:
        (x, y, _), move = step
        return np.asarray(move.poses + np.append(self.course.places[x, y], 0.0))

    def _stuck(self) -> Stuck:
        """The pose nearest to the goal, and what its moves would sweep that may not be swept."""
        near = min(self.came, key=lambda place: (self._left(place), place), default=None)
        if near is None:
            return Stuck(np.inf)
        sweeps = (self._sweep(near, move) for move in self.moves[near[2]])
        blocked = tuple(sweep for sweep in sweeps if not shapely.covers(self.course.ground, sweep))
        x, y = self.course.places[near[0], near[1]]
        return Stuck(self._left(near) / _EAGER, blocked, (float(x), float(y)))

    def _steps_to(self, place: Place) -> Iterator[Step]:
        step = self.came[place]
        while step is not None:
            yield step
            step = self.came[step[0]]


def _grade(course: Course, poses: Numbers) -> float:
    """Steepest rise per run between two poses that follow each other."""
    run_ft = np.hypot(*np.diff(poses[:, :2], axis=0).T)
    rise_ft = np.abs(np.diff(course.height_ft(poses[:, :2])))
    moved = run_ft > _HAIR
    return float((rise_ft[moved] / run_ft[moved]).max(initial=0.0))


def _rows(figures: Numbers) -> list[list[float]]:
    """Figures as lists, out of which one is read much quicker than out of an array."""
    return [row.tolist() for row in figures]


def _open_to(course: Course, heading: int) -> NDArray[np.bool_]:
    """Places from which the goal may be come to, and where discs as wide as the vehicle, at its middle and near both of
    its ends, lie on free ground.
    """
    vehicle, turn = course.vehicle, radians(360 / HEADINGS * heading)
    x, y = round(cos(turn)), round(sin(turn))
    steps = max(0, floor((vehicle.length_ft - vehicle.width_ft) / 2 / (STEP_FT * hypot(x, y))))
    wide = np.pad(course.open, steps)
    ends = (np.roll(wide, (side * steps * x, side * steps * y), (0, 1)) for side in (-1, 1))
    inner = np.s_[steps : wide.shape[0] - steps, steps : wide.shape[1] - steps]
    return np.asarray(np.logical_and.reduce([wide, *ends])[inner] & np.isfinite(course.to_go_ft))


def _starts(course: Course, gate: Gate) -> Iterator[Place]:
    """Poses on the street just outside a gate, within its width and heading in."""
    away = course.places - np.array(gate.at)
    along, (in_x, in_y) = away @ np.array(gate.inward), gate.inward
    across = np.abs(away @ np.array([-in_y, in_x]))
    outside_ft = -along - course.vehicle.length_ft / 2
    there = (
        (outside_ft >= 0.0)
        & (outside_ft < 1.5 * STEP_FT)
        & (across <= gate.width_ft / 2)
        & np.isfinite(course.to_go_ft)
    )
    for heading in range(HEADINGS):
        turn = radians(360 / HEADINGS * heading)
        if cos(turn) * in_x + sin(turn) * in_y > _AHEAD:
            yield from ((int(x), int(y), heading) for x, y in np.argwhere(there))
