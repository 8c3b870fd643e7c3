"""The ground that a vehicle may drive on as a lattice of places, with how far each is from where it must come to."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import ceil
from typing import Final

import numpy as np
import scipy
import shapely
from numpy.typing import NDArray
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import Vehicle
from optimizer.layout import TOLERANCE_FT
from optimizer.site import Point

Numbers = NDArray[np.float64]
STEP_FT: Final = 1.0
_SLIVER_FT: Final = 1.0
"""Ground for the middle of a vehicle narrower than a step may hold no line of the lattice, unless one is laid in it."""
_LONG_FT: Final = 2.0
_HAIR_FT: Final = 1e-6
_STEPS: Final = ((1, 0), (0, 1), (1, 1), (1, -1))


@dataclass(frozen=True, slots=True)
class Gate:
    """Middle of an entrance, its clear width [ft], and the direction into the yard."""

    name: str
    at: Point
    width_ft: float
    inward: Point


@dataclass(frozen=True, eq=False)
class Course:
    """Ground that is free of obstacles, the street before the gates included, and the `goal` to come to [ft].

    `height_ft` gives the level of points (n, 2), `rough` how many feet elsewhere are rather driven than one there.
    """

    ground: BaseGeometry
    goal: Polygon
    gates: tuple[Gate, ...]
    vehicle: Vehicle
    height_ft: Callable[[Numbers], Numbers]
    rough: Callable[[Numbers], Numbers]

    @cached_property
    def middles(self) -> BaseGeometry:
        """Ground on which the middle of the vehicle may be at all."""
        return middles_on(self.ground, self.vehicle)

    @cached_property
    def origin(self) -> Point:
        """Lower left point of the lattice: lines run in the longest tight passage along each axis, or by the gate."""
        left, low, _, _ = self.ground.bounds
        wide = self.middles.buffer(-_SLIVER_FT / 2).buffer(_SLIVER_FT / 2 + TOLERANCE_FT)
        narrow = [part.bounds for part in shapely.get_parts(self.middles.difference(wide))]
        at = self.gates[0].at
        x = _middle([(b[0], b[2], b[3] - b[1]) for b in narrow], at[0])
        y = _middle([(b[1], b[3], b[2] - b[0]) for b in narrow], at[1])
        return (x - ceil((x - left) / STEP_FT) * STEP_FT, y - ceil((y - low) / STEP_FT) * STEP_FT)

    @cached_property
    def places(self) -> Numbers:
        """Points of the lattice, shape (columns, rows, 2)."""
        _, _, right, top = self.ground.bounds
        columns, rows = (
            ceil((end - start) / STEP_FT) + 1 for end, start in zip((right, top), self.origin, strict=True)
        )
        x, y = self.origin[0] + STEP_FT * np.arange(columns), self.origin[1] + STEP_FT * np.arange(rows)
        return np.stack(np.meshgrid(x, y, indexing="ij"), axis=-1)

    @cached_property
    def open(self) -> NDArray[np.bool_]:
        """Whether the middle of the vehicle may be at each place."""
        shapely.prepare(self.middles)
        return np.asarray(shapely.contains_xy(self.middles, self.places[..., 0], self.places[..., 1]))

    @cached_property
    def levels_ft(self) -> Numbers:
        """Height of the ground at each place [ft]."""
        return self.height_ft(self.places.reshape(-1, 2)).reshape(self.open.shape)

    @cached_property
    def steepest(self) -> float:
        """Rise per run that no ground of the lattice passes."""
        z = self.levels_ft
        return float(np.hypot(np.abs(np.diff(z, axis=0)).max(), np.abs(np.diff(z, axis=1)).max())) / STEP_FT

    @cached_property
    def to_go_ft(self) -> Numbers:
        """Way from each place to the goal of a vehicle without length and turns [ft]; inf where none leads there, or
        none on which every step along or across the lattice is one that the vehicle climbs.
        """
        index = np.full(self.open.shape, -1)
        index[self.open] = np.arange(np.count_nonzero(self.open))
        start, end, length = (np.concatenate(parts) for parts in zip(*self._steps(index), strict=True))
        count, near = int(index.max()) + 1, self._near_goal()
        found = np.full(self.open.shape, np.inf)
        if count and len(near):
            graph = scipy.sparse.coo_array((length, (start, end)), shape=(count, count)).tocsr()
            found[self.open] = scipy.sparse.csgraph.dijkstra(graph, directed=False, indices=near, min_only=True)
        return found

    def _steps(self, index: NDArray[np.intp]) -> Iterator[tuple[NDArray[np.intp], NDArray[np.intp], Numbers]]:
        """Numbers of the places that a step joins, and its length [ft]."""
        z = self.levels_ft[self.open]
        for step in _STEPS:
            here, there = _joined(index, step)
            length_ft = STEP_FT * float(np.hypot(*step))
            climbed = np.abs(z[here] - z[there]) <= self.vehicle.steepest * length_ft + _HAIR_FT
            yield here[climbed], there[climbed], np.full(np.count_nonzero(climbed), length_ft)

    def _near_goal(self) -> NDArray[np.intp]:
        """Numbers of the open places from which the vehicle, whichever way it stands, may reach into the goal."""
        left, low, right, top = self.goal.bounds
        x, y = self.places[self.open].T
        off = np.hypot(np.maximum(np.maximum(left - x, x - right), 0), np.maximum(np.maximum(low - y, y - top), 0))
        return np.flatnonzero(off <= self.vehicle.length_ft / 2)


def middles_on(ground: BaseGeometry, one: Vehicle) -> BaseGeometry:
    """Ground on which the middle of a vehicle may be at all: half its width off every obstacle."""
    return ground.buffer(TOLERANCE_FT - one.width_ft / 2, quad_segs=2)


def _middle(slivers: Sequence[tuple[float, float, float]], otherwise: float) -> float:
    """Middle line of the longest of narrow pieces, given by their two sides and their length."""
    long = [sliver for sliver in slivers if sliver[2] > _LONG_FT and sliver[1] - sliver[0] < _SLIVER_FT]
    if not long:
        return otherwise
    one, other, _ = min(long, key=lambda sliver: (-round(sliver[2], 3), round(sliver[0], 3)))
    return (one + other) / 2


def _joined(index: NDArray[np.intp], step: tuple[int, int]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Numbers of places that lie one step from each other and are both open."""
    x, y = step
    columns, rows = index.shape
    here = index[: columns - x, (-y if y < 0 else 0) : rows - max(y, 0)]
    there = index[x:, max(y, 0) : rows + min(y, 0)]
    both = (here >= 0) & (there >= 0)
    return here[both], there[both]
