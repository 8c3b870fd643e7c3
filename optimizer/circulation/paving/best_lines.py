"""Of the candidate lines between each two points the best, with what they measure."""

from collections.abc import Sequence
from dataclasses import dataclass, fields
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from optimizer.circulation.paving.candidates import Lines, short_slants, turn_at, turns
from optimizer.circulation.paving.gates import Gate
from optimizer.circulation.paving.land import Land
from optimizer.circulation.paving.nearby import Nearby
from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
TURN_FT: Final = 8.0
"""A bend, up to a right angle, counts as so much further way; common practice, no source: few bends."""


@dataclass(frozen=True, slots=True, eq=False)
class BestLines:
    """Lines from points `first` to `second`, by number, with their `corners` (n, 4, 2), as in `Lines`.

    Of each: `length_ft`, `unpaved_ft` still to be paved, `lawn_ft` on lawns and their verges, and `turn`, the bends
    along it and between it and the gates at its ends.
    """

    first: NDArray[np.int64]
    second: NDArray[np.int64]
    corners: Coordinates
    length_ft: Coordinates
    unpaved_ft: Coordinates
    lawn_ft: Coordinates
    turn: Coordinates

    def of(self, numbers: NDArray[np.int64], first: NDArray[np.int64], second: NDArray[np.int64]) -> "BestLines":
        """The lines of these numbers, between points that have other numbers."""
        return BestLines(first, second, *(part[numbers] for part in _parts(self)[2:]))

    def and_also(self, more: "BestLines") -> "BestLines":
        """These lines, and then others."""
        return BestLines(*(np.concatenate(both) for both in zip(_parts(self), _parts(more), strict=True)))


def _parts(lines: BestLines) -> list[NDArray[Any]]:
    return [getattr(lines, part.name) for part in fields(lines)]


def best_lines(
    land: Land, near: Nearby, gates: Sequence[Gate], points: Coordinates, lines: Lines, *, links: int = 0
) -> BestLines:
    """Between each two points (gates first, in order) that of the lines on the ground with the least of length and
    turn; the last of the lines, so many as there are `links`, are taken wherever they lie.
    """
    length, turn = lines.length_ft, _turn(gates, points, lines)
    likely = turn + short_slants(lines.corners, lines.steps_ft)
    pair = lines.first * len(points) + lines.second
    order = np.lexsort((length + TURN_FT * likely, pair))
    is_first = np.ones(len(order), dtype=bool)
    is_first[1:] = np.diff(pair[order]) != 0
    is_link = np.arange(len(order)) >= len(order) - links
    best = _first_on_ground(near, lines, order, is_first, is_link)
    lines = lines.only(best)
    on_lawns, on_paved, on_verges = land.areas.within_ft(lines.corners)
    unpaved = np.maximum(0.0, lines.steps_ft - on_lawns - on_paved)
    turn = turn[best] + short_slants(lines.corners, unpaved)
    return BestLines(
        lines.first,
        lines.second,
        lines.corners,
        length[best],
        unpaved.sum(axis=1),
        on_verges.sum(axis=1),
        turn,
    )


def _first_on_ground(
    near: Nearby, lines: Lines, order: NDArray[np.int64], is_first: NDArray[np.bool_], is_link: NDArray[np.bool_]
) -> NDArray[np.int64]:
    """Of lines in an order, in groups that begin where marked, the first of each group on the ground or a link."""
    starts = np.flatnonzero(is_first)
    ends, asked = np.append(starts[1:], len(order)), starts.copy()
    waiting = np.flatnonzero(asked < ends)
    while len(waiting):
        these = order[asked[waiting]]
        is_on = is_link[these]
        is_on[~is_on] = near.covers(lines.corners[these[~is_on]])
        asked[waiting[~is_on]] += 1
        waiting = waiting[~is_on & (asked[waiting] < ends[waiting])]
    return order[asked[asked < ends]]


def _turn(gates: Sequence[Gate], points: Coordinates, lines: Lines) -> Coordinates:
    out = np.zeros_like(points)
    out[: len(gates)] = np.array([gate.out for gate in gates]).reshape(-1, 2)
    corners = lines.corners
    # Of a line with fewer corners the last is there again: the last step is that from the next that is another.
    last, earlier = corners[:, 2] - corners[:, 3], corners[:, 1] - corners[:, 3]
    last = np.where(_is_long(last), last, np.where(_is_long(earlier), earlier, corners[:, 0] - corners[:, 3]))
    return turns(corners) + turn_at(out[lines.first], corners[:, 1] - corners[:, 0]) + turn_at(out[lines.second], last)


def _is_long(steps: Coordinates) -> NDArray[np.bool_]:
    return np.asarray((np.abs(steps[:, 0]) + np.abs(steps[:, 1]) > _EVEN_FT)[:, None])
