"""A way that people walk: between what, where, how long."""

from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import Final

import numpy as np

from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.network import Network
from optimizer.circulation.stops import Stop
from optimizer.circulation.visibility import Coordinates, route
from optimizer.site import Point

_SAME_FT: Final = 1e-6  # nearer points are one point


@dataclass(frozen=True, slots=True)
class Way:
    """A way with its centre line [ft] from anchor to anchor, what lies inside rooms included."""

    between: tuple[str, str]
    width_ft: float
    points: tuple[Point, ...]
    length_ft: float


def way_between(network: Network, start: Stop, end: Stop) -> Way | None:
    """Shortest way from one stop's anchor to another's; None where no clear way joins them."""
    firsts, lasts = network.gates(start), network.gates(end)
    if not firsts or not lasts:
        return None
    lengths = network.lengths_ft[np.ix_(firsts, lasts)] + _inside_ft(start)[:, None] + _inside_ft(end)[None, :]
    first, last = np.unravel_index(lengths.argmin(), lengths.shape)
    if not np.isfinite(lengths[first, last]):
        return None
    between = _line(network, firsts[first], lasts[last])
    return way_along((start.name, end.name), (start.anchor, *between, end.anchor))


def _inside_ft(stop: Stop) -> Coordinates:
    """Length from each gate of a stop to its anchor [ft]."""
    return np.array([dist(gate, stop.anchor) for gate in stop.gates], dtype=np.float64)


def _line(network: Network, first: int, last: int) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in network.points[list(route(network.previous, first, last))])


def way_along(between: tuple[str, str], line: tuple[Point, ...], *, width_ft: float = CLEAR_WIDTH_FT) -> Way:
    """Way along a line, its doubled points left out."""
    points = (line[0], *(after for before, after in pairwise(line) if dist(before, after) > _SAME_FT))
    return Way(between, width_ft, points, sum(dist(a, b) for a, b in pairwise(points)))
