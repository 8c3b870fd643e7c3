"""Candidate lines between points: in steps of 45 degrees, with at most two bends."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.circulation.paving.nearby import Cell, Nearby
from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_ODD: Final = 12.0  # bends: beside a slanted wall, where nothing else fits, a way runs along it
_SHORT: Final = 2.0  # bends: what a slanted leg counts that is too short to read as one; common practice, no source
SLANT_FT: Final = 8.0
"""Least length of a leg at 45 degrees; layout rule 26, common practice, no source."""
_RIGHT_DEG: Final = 90.0
_STRAIGHT_DEG: Final = 20.0  # a slighter turn is no bend to who walks; common practice, no source


Corner = tuple[Coordinates, Cell]
"""One corner of each of many lines, shape (n, 2), with the cells that they lie in."""


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """Lines between points: the numbers of their ends, shapes (n,), and their corners, shape (n, 4, 2), the last
    corner repeated where there are fewer.
    """

    first: NDArray[np.int64]
    second: NDArray[np.int64]
    corners: Coordinates

    def only(self, kept: NDArray[np.bool_] | NDArray[np.int64]) -> "Lines":
        """The lines that are marked, or of these numbers."""
        return Lines(self.first[kept], self.second[kept], self.corners[kept])

    def and_also(self, more: "Lines") -> "Lines":
        """These lines, and then others."""
        return _lines((self, more))

    @property
    def steps_ft(self) -> Coordinates:
        """Lengths of the steps of each line, shape (n, 3) [ft]."""
        return np.hypot(np.diff(self.corners[..., 0], axis=1), np.diff(self.corners[..., 1], axis=1))

    @property
    def length_ft(self) -> Coordinates:
        """Length of each line [ft]."""
        lengths = self.steps_ft
        return np.asarray(lengths[:, 0] + lengths[:, 1] + lengths[:, 2])


def lines_between(near: Nearby, points: Coordinates, pairs: NDArray[np.int64]) -> Lines:
    """Every candidate line between pairs of points, shape (n, 2), that may lie on the ground by its cells.

    Along an axis or at 45 degrees there is the straight line alone; else five with bends, at 45 degrees first or last,
    square either way, or at 45 degrees in the middle, and last the slanted one.
    """
    column, row = near.cells(points)
    there = near.has((column, row))
    pairs = pairs[there[pairs[:, 0]] & there[pairs[:, 1]]]
    away = points[pairs[:, 1]] - points[pairs[:, 0]]
    across, up = np.abs(away[:, 0]), np.abs(away[:, 1])
    is_apart, least = across + up > _EVEN_FT, np.minimum(across, up)
    is_straight = (least < _EVEN_FT) | (np.abs(across - up) < _EVEN_FT)
    straight, bent = pairs[is_apart & is_straight], pairs[is_apart & ~is_straight]

    def corner(of: NDArray[np.int64]) -> Corner:
        return points[of], (column[of], row[of])

    starts, ends = (corner(of) for of in bent.T)
    found = [_near(near, straight, [corner(of) for of in straight.T])]
    found += [_near(near, bent, (starts, *bends, ends)) for bends in _bends(near, starts, ends)]
    found.append(_near(near, bent, (starts, ends), is_slanted=True))
    return _lines(found)


def _lines(parts: Sequence[Lines]) -> Lines:
    return Lines(*(np.concatenate([getattr(part, name) for part in parts]) for name in ("first", "second", "corners")))


def _bends(near: Nearby, start: Corner, end: Corner) -> Iterator[tuple[Corner, ...]]:
    """Where lines from starts to ends bend."""
    (starts, (start_column, start_row)), (ends, (end_column, end_row)) = start, end
    away = ends - starts
    slant = np.minimum(np.abs(away[:, 0]), np.abs(away[:, 1]))[:, None] * np.sign(away)
    rest = (away - slant) / 2
    at_45 = [(bend, near.cells(bend)) for bend in (starts + slant, ends - slant, starts + rest, starts + rest + slant)]
    yield (at_45[0],)
    yield (at_45[1],)
    yield ((np.stack([ends[:, 0], starts[:, 1]], axis=1), (end_column, start_row)),)
    yield ((np.stack([starts[:, 0], ends[:, 1]], axis=1), (start_column, end_row)),)
    yield (at_45[2], at_45[3])


def _near(near: Nearby, pairs: NDArray[np.int64], corners: Sequence[Corner], *, is_slanted: bool = False) -> Lines:
    """Lines of one shape that may lie on the ground; most bend off it, so that their bends are asked first."""
    kept = np.arange(len(pairs))
    for _, (column, row) in corners[1:-1]:
        kept = kept[near.has((column[kept], row[kept]))]
    if is_slanted:
        (starts, _), (ends, _) = corners
        kept = kept[near.may_lie(starts[kept], ends[kept])]
    else:
        for (_, before), (_, after) in pairwise(corners):
            one, other = ((column[kept], row[kept]) for column, row in (before, after))
            kept = kept[near.may_run(one, other)]
    whole = [points[kept] for points, _ in corners]
    return Lines(pairs[kept, 0], pairs[kept, 1], np.stack([*whole, *[whole[-1]] * (4 - len(whole))], axis=1))


def turns(corners: Coordinates) -> Coordinates:
    """Bends of each line; one at any other angle than in steps of 45 degrees counts as many."""
    x, y = np.diff(corners[..., 0], axis=1), np.diff(corners[..., 1], axis=1)
    bends = _bends_between(x[:, :-1], y[:, :-1], x[:, 1:], y[:, 1:])
    across, up = np.abs(x[:, 0]), np.abs(y[:, 0])
    is_odd = (np.minimum(across, up) > _EVEN_FT) & (np.abs(across - up) > _EVEN_FT)
    return np.asarray(bends[:, 0] + bends[:, 1] + _ODD * is_odd)


def short_slants(corners: Coordinates, steps_ft: Coordinates) -> Coordinates:
    """Bends that each line counts more, for its slanted steps of which so little, shape (n, 3), is to be seen [ft]."""
    steps = np.abs(np.diff(corners, axis=1))
    is_short = (steps_ft > _EVEN_FT) & (steps_ft < SLANT_FT - _EVEN_FT) & (steps.min(axis=2) > _EVEN_FT)
    return np.asarray(_SHORT * is_short.sum(axis=1))


def turn_at(out: Coordinates, heading: Coordinates) -> Coordinates:
    """Bends between a gate's heading out and a line's first step; 0 where either has no length."""
    return _bends_between(out[:, 0], out[:, 1], heading[:, 0], heading[:, 1])


def _bends_between(
    before_x: Coordinates, before_y: Coordinates, after_x: Coordinates, after_y: Coordinates
) -> Coordinates:
    """Bends from one step to the next: one up to a right angle, and half of one more for each 45 degrees beyond it."""
    lengths = np.hypot(before_x, before_y) * np.hypot(after_x, after_y)
    has_none = lengths < _EVEN_FT
    cosine = (before_x * after_x + before_y * after_y) / np.where(has_none, 1.0, lengths)
    angle = np.degrees(np.arccos(np.minimum(np.maximum(cosine, -1.0), 1.0)))
    bends = np.maximum(1.0, angle / _RIGHT_DEG)
    return np.where(has_none | (angle < _STRAIGHT_DEG), 0.0, bends)
