"""A way that people walk: between what, where, how long."""

from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import Final, Literal

import numpy as np
import shapely

from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.network import Network, to_edge_ft
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


LegUse = Literal["arrival", "main", "service", "mower"]


@dataclass(frozen=True, slots=True)
class Leg:
    """A paved stretch between two ends or branchings: its centre line [ft], what it serves, and whose trips use it."""

    points: tuple[Point, ...]
    width_ft: float
    use: LegUse
    trips: tuple[tuple[str, str], ...]


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
    return _way((start.name, end.name), (start.anchor, *between, end.anchor))


def branch_to(network: Network, start: Stop, trunk: Stop) -> Way | None:
    """Shortest way from a stop's anchor to the nearest point of another stop's area; None where there is none."""
    gates = network.gates(start)
    lengths = network.lengths_ft[gates] + to_edge_ft(network, trunk) + _inside_ft(start)[:, None]
    if not np.isfinite(lengths).any():
        return None
    gate, node = np.unravel_index(lengths.argmin(), lengths.shape)
    line = _line(network, gates[gate], int(node))
    foot = shapely.shortest_line(shapely.Point(line[-1]), trunk.area).coords[-1]
    return _way((start.name, trunk.name), (start.anchor, *line, foot))


def _inside_ft(stop: Stop) -> Coordinates:
    """Length from each gate of a stop to its anchor [ft]."""
    return np.array([dist(gate, stop.anchor) for gate in stop.gates], dtype=np.float64)


def _line(network: Network, first: int, last: int) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in network.points[list(route(network.previous, first, last))])


def _way(between: tuple[str, str], line: tuple[Point, ...]) -> Way:
    """Make a way along a line, its doubled points left out."""
    points = (line[0], *(after for before, after in pairwise(line) if dist(before, after) > _SAME_FT))
    return Way(between, CLEAR_WIDTH_FT, points, sum(dist(a, b) for a, b in pairwise(points)))
