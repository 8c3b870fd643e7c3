"""Candidate lines between points: in steps of 45 degrees, with at most two bends."""

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.circulation.paving.nearby import Nearby
from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_SLANTED: Final = 40.0  # eighths: beside a slanted wall, where nothing else fits, a way runs along it


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

    @property
    def length_ft(self) -> Coordinates:
        """Length of each line [ft]."""
        lengths = np.hypot(np.diff(self.corners[..., 0], axis=1), np.diff(self.corners[..., 1], axis=1))
        return np.asarray(lengths[:, 0] + lengths[:, 1] + lengths[:, 2])


def lines_between(near: Nearby, points: Coordinates, pairs: NDArray[np.int64]) -> Lines:
    """Every candidate line between pairs of points, shape (n, 2), that may lie on the ground by its cells."""
    away = np.abs(points[pairs[:, 0]] - points[pairs[:, 1]])
    lines, is_slanted = _all_lines(points, pairs[away[:, 0] + away[:, 1] > _EVEN_FT])
    return lines.only(near.may_hold(lines.corners, is_slanted))


def _all_lines(points: Coordinates, pairs: NDArray[np.int64]) -> tuple[Lines, NDArray[np.bool_]]:
    """Lines of each pair, and which of them are slanted.

    Along an axis or at 45 degrees there is the straight line alone; else five with bends, at 45 degrees first or last,
    square either way, or at 45 degrees in the middle, and last the slanted one.
    """
    starts, ends = points[pairs[:, 0]], points[pairs[:, 1]]
    away = ends - starts
    across = np.abs(away)
    least = np.minimum(across[:, 0], across[:, 1])
    is_straight = (least < _EVEN_FT) | (np.abs(across[:, 0] - across[:, 1]) < _EVEN_FT)
    slant = least[:, None] * np.sign(away)
    rest = (away - slant) / 2
    square = np.stack([ends[:, 0], starts[:, 1], starts[:, 0], ends[:, 1]], axis=1)
    singly = (starts + slant, ends - slant, square[:, :2], square[:, 2:])
    bends = (*((bend, ends) for bend in singly), (starts + rest, starts + rest + slant), (ends, ends))
    straight, bent = np.flatnonzero(is_straight), np.flatnonzero(~is_straight)
    of = np.concatenate([straight, *[bent] * len(bends)])
    corners = np.empty((len(of), 4, 2))
    corners[:, 0], corners[:, 3] = starts[of], ends[of]
    corners[: len(straight), 1:3] = ends[straight, None]
    by_bends = corners[len(straight) :].reshape(len(bends), len(bent), 4, 2)
    for lines, (second, third) in zip(by_bends, bends, strict=True):
        lines[:, 1], lines[:, 2] = second[bent], third[bent]
    return Lines(pairs[of, 0], pairs[of, 1], corners), np.arange(len(of)) >= len(of) - len(bent)


def turns(corners: Coordinates) -> Coordinates:
    """Eighths of a full turn that each line bends through; one at any other angle counts as many of them."""
    x, y = np.diff(corners[..., 0], axis=1), np.diff(corners[..., 1], axis=1)
    bends = _eighths(x[:, :-1], y[:, :-1], x[:, 1:], y[:, 1:])
    across, up = np.abs(x[:, 0]), np.abs(y[:, 0])
    is_slanted = (np.minimum(across, up) > _EVEN_FT) & (np.abs(across - up) > _EVEN_FT)
    return np.asarray(bends[:, 0] + bends[:, 1] + _SLANTED * is_slanted)


def turn_at(out: Coordinates, heading: Coordinates) -> Coordinates:
    """Eighths of a full turn between a gate's heading out and a line's first step; 0 where either has no length."""
    return _eighths(out[:, 0], out[:, 1], heading[:, 0], heading[:, 1])


def _eighths(before_x: Coordinates, before_y: Coordinates, after_x: Coordinates, after_y: Coordinates) -> Coordinates:
    lengths = np.hypot(before_x, before_y) * np.hypot(after_x, after_y)
    has_none = lengths < _EVEN_FT
    cosine = (before_x * after_x + before_y * after_y) / np.where(has_none, 1.0, lengths)
    angle = np.degrees(np.arccos(np.minimum(np.maximum(cosine, -1.0), 1.0))) / 45.0
    return np.where(has_none, 0.0, angle)
