"""Candidate lines between points: in steps of 45 degrees, with at most two bends, on the ground all along."""

from dataclasses import dataclass
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.circulation.ground import Ground
from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_TOUCH_FT: Final = 1e-6  # lines along the ground's own edge are on it, whatever rounding says


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
        steps = np.diff(self.corners, axis=1)
        return np.asarray(np.hypot(steps[..., 0], steps[..., 1]).sum(axis=1))


def lines_between(ground: Ground, points: Coordinates, pairs: NDArray[np.int64]) -> Lines:
    """Every candidate line between pairs of points, shape (n, 2), that stays on the ground."""
    lines = _all_lines(points, pairs)
    steps = np.abs(np.diff(lines.corners, axis=1)).sum(axis=(1, 2))
    return _on(ground, lines.only(steps > _EVEN_FT))


def _on(ground: Ground, lines: Lines) -> Lines:
    wider = ground.buffer(_TOUCH_FT, join_style="mitre")
    shapely.prepare(wider)
    return lines.only(shapely.covers(wider, shapely.linestrings(lines.corners)))


def _all_lines(points: Coordinates, pairs: NDArray[np.int64]) -> Lines:
    starts, ends = points[pairs[:, 0]], points[pairs[:, 1]]
    away = ends - starts
    least = np.abs(away).min(axis=1)
    is_straight = (least < _EVEN_FT) | (np.abs(np.abs(away[:, 0]) - np.abs(away[:, 1])) < _EVEN_FT)
    slant = least[:, None] * np.sign(away)
    rest = (away - slant) / 2
    straight = (starts, ends, ends, ends)
    bent = (
        (starts, starts + slant, ends, ends),
        (starts, ends - slant, ends, ends),
        (starts, np.stack([ends[:, 0], starts[:, 1]], axis=1), ends, ends),
        (starts, np.stack([starts[:, 0], ends[:, 1]], axis=1), ends, ends),
        (starts, starts + rest, starts + rest + slant, ends),
    )
    parts = [(is_straight, straight), *((~is_straight, corners) for corners in bent)]
    return Lines(
        np.concatenate([pairs[kept, 0] for kept, _ in parts]),
        np.concatenate([pairs[kept, 1] for kept, _ in parts]),
        np.concatenate([np.stack(corners, axis=1)[kept] for kept, corners in parts]),
    )


def turns(corners: Coordinates) -> Coordinates:
    """Eighths of a full turn that each line bends through; corners as in `Lines`."""
    steps = np.diff(corners, axis=1)
    return _eighths(steps[:, 0], steps[:, 1]) + _eighths(steps[:, 1], steps[:, 2])


def turn_at(out: Coordinates, heading: Coordinates) -> Coordinates:
    """Eighths of a full turn between a gate's heading out and a line's first step; 0 where either has no length."""
    return _eighths(out, heading)


def _eighths(before: Coordinates, after: Coordinates) -> Coordinates:
    lengths = np.hypot(before[:, 0], before[:, 1]) * np.hypot(after[:, 0], after[:, 1])
    cosine = (before * after).sum(axis=1) / np.where(lengths < _EVEN_FT, 1.0, lengths)
    angle = np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))) / 45.0
    return np.where(lengths < _EVEN_FT, 0.0, angle)
