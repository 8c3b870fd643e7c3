"""The levels along a way: the stretches between rooms, and the edges where one room meets another."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.catalogue.steps import risers_for, step_rules, tread_for
from optimizer.circulation import Way
from optimizer.fields import LANDING_FT
from optimizer.grading.paved import Paved
from optimizer.site import Point

TREADS_FT: Final = 2.0  # of the steps that a door's landing usually has; common practice, no source
_EVERY_FT: Final = 0.5  # a way is looked at this often
_NO_LENGTH_FT: Final = 1e-6


Top = tuple[Point, Point]
"""A point of a way, and the unit vector in which the way goes there."""


@dataclass(frozen=True, slots=True)
class Leg:
    """A stretch of a way outside paved rooms, or the edge between two of them, which has no length.

    `tops` are where steps may begin from above, the uppermost first, just beyond the upper end or the landing of a door
    there, each with the unit vector in which the way goes; `from_ft` and `to_ft` are the levels at its ends.
    """

    tops: tuple[Top, ...]
    length_ft: float
    from_ft: float
    to_ft: float

    @property
    def rise_ft(self) -> float:
        """Level difference, whichever way it goes [ft]."""
        return abs(self.to_ft - self.from_ft)


@dataclass(frozen=True, slots=True)
class _Run:
    """Points of a way, by number, that lie in one room or (-1) outside all."""

    room: int
    first: int
    last: int


def legs_of(
    paved: Paved, levels_ft: Sequence[float], way: Way, start_ft: float | None = None, end_ft: float | None = None
) -> tuple[Leg, ...]:
    """Legs of a way in order; at its ends the ground counts, or the level given there, as at a door [ft]."""
    if way.length_ft <= _NO_LENGTH_FT:
        return ()
    points = _along(way)
    ground = paved.ground.z_ft(points[[0, -1]])
    start, end = (float(z) if given is None else given for z, given in zip(ground, (start_ft, end_ft), strict=True))
    runs = _runs(paved, points)
    heights = [start, *(levels_ft[run.room] if run.room >= 0 else 0.0 for run in runs), end]
    step = way.length_ft / (len(points) - 1)
    skipped = tuple(0.0 if given is None else LANDING_FT + TREADS_FT for given in (start_ft, end_ft))
    return tuple(_legs(points, runs, heights, step, skipped))


def rooms_along(paved: Paved, way: Way) -> tuple[str, ...]:
    """Names of the paved rooms that a way leads through, in its order."""
    return tuple(dict.fromkeys(paved.rooms[run.room].name for run in _runs(paved, _along(way)) if run.room >= 0))


def _along(way: Way) -> NDArray[np.float64]:
    count = max(1, int(np.ceil(way.length_ft / _EVERY_FT)))
    line = shapely.LineString(way.points)
    points = shapely.line_interpolate_point(line, np.linspace(0, line.length, count + 1))
    return np.asarray(shapely.get_coordinates(points), dtype=np.float64)


def _runs(paved: Paved, points: NDArray[np.float64]) -> list[_Run]:
    rooms = paved.index_at(points)
    cuts = [0, *(int(cut) + 1 for cut in np.flatnonzero(np.diff(rooms))), len(points)]
    return [_Run(int(rooms[first]), first, after - 1) for first, after in pairwise(cuts)]


def _legs(
    points: NDArray[np.float64],
    runs: Sequence[_Run],
    heights: Sequence[float],
    step_ft: float,
    skipped_ft: tuple[float, ...],
) -> Iterator[Leg]:
    """`heights` are those of the way's start, of each run (of no meaning outside rooms), and of its end; `skipped_ft`
    what the landings of doors take of its two ends.
    """
    for number, run in enumerate(runs):
        if run.room < 0:
            # A room's edge lies about half a step before the first point outside it.
            sides = (run.first > 0) + (run.last < len(points) - 1)
            length = step_ft * (run.last - run.first + sides / 2)
            begins, ends = heights[number], heights[number + 2]
            yield Leg(_tops(points, run, step_ft, skipped_ft, ends - begins), length, begins, ends)
        elif number + 1 < len(runs) and runs[number + 1].room >= 0:
            yield Leg((_along_at(points, run.last),), 0.0, heights[number + 1], heights[number + 2])


def _tops(
    points: NDArray[np.float64], run: _Run, step_ft: float, skipped_ft: tuple[float, ...], rise_ft: float
) -> tuple[Top, ...]:
    """Where steps may begin from above on a run, and the way's direction there.

    That is from its upper end down wherever the way is straight for as long as the steps are; where it is nowhere, on
    its longest straight stretch.
    """
    falls = rise_ft < 0
    at_door = run.first == 0 if falls else run.last == len(points) - 1
    skipped = round(skipped_ft[0 if falls else 1] / step_ft) if at_door else 0
    inwards = min(skipped, (run.last - run.first) // 2)
    down = points[run.first : run.last + 1][:: 1 if falls else -1][inwards:]
    if len(down) == 1:
        return (_along_at(points, run.first + inwards if falls else run.last - inwards),)
    usable_ft = np.minimum(step_ft * _straight_on(down), _steps_ft(abs(rise_ft)))
    sense = 1.0 if falls else -1.0
    return tuple(_heading(down, int(at), sense) for at in np.flatnonzero(usable_ft >= usable_ft.max()))


def _heading(down: NDArray[np.float64], at: int, sense: float) -> Top:
    """A point of a run from above, by its number, with the direction in which the way goes, up or down."""
    x, y = (down[at + 1] - down[at]) / max(float(np.hypot(*(down[at + 1] - down[at]))), _NO_LENGTH_FT)
    return (float(down[at, 0]), float(down[at, 1])), (float(sense * x), float(sense * y))


def _straight_on(points: NDArray[np.float64]) -> NDArray[np.float64]:
    """From each point but the last, over how many points more the line runs straight."""
    steps = np.diff(points, axis=0)
    turned = np.abs(steps[:-1, 0] * steps[1:, 1] - steps[:-1, 1] * steps[1:, 0]) > _NO_LENGTH_FT
    bends = np.concatenate([np.flatnonzero(turned), [len(steps) - 1]])
    numbers = np.arange(len(steps))
    return np.asarray(bends[np.searchsorted(bends, numbers)] - numbers + 1, dtype=np.float64)


def _steps_ft(rise_ft: float) -> float:
    """Length of the steps that take a rise [ft], landings left out."""
    risers = max(risers_for(12 * rise_ft), int(step_rules().least_risers))
    return (risers - 1) * tread_for(12 * rise_ft / risers) / 12


def _along_at(points: NDArray[np.float64], at: int) -> Top:
    """Point of a way, by its number, and the way's direction there."""
    before, after = points[max(0, at - 1)], points[min(len(points) - 1, at + 1)]
    x, y = (after - before) / max(float(np.hypot(*(after - before))), _NO_LENGTH_FT)
    return (float(points[at, 0]), float(points[at, 1])), (float(x), float(y))
