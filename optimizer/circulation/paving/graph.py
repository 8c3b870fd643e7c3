"""The graph that routes are chosen on: gates and turning corners, joined by candidate lines."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.circulation.paving.best_lines import TURN_FT, BestLines, best_lines
from optimizer.circulation.paving.candidates import Lines, lines_between
from optimizer.circulation.paving.gates import Gate, Link, Trips, gates_of, links_of
from optimizer.circulation.paving.land import Land
from optimizer.circulation.paving.nearby import Nearby, nearby
from optimizer.circulation.paving.roads import Roads, roads_of
from optimizer.circulation.paving.terminals import Terminal
from optimizer.circulation.visibility import Coordinates, turning_points
from optimizer.layout import TOLERANCE_FT

_EVEN_FT: Final = 1e-6
_ALONG_FT: Final = 25.0  # along paving that is there, nearer than corners may be to be joined
_CORNERS_FT: Final = 30.0  # corners farther apart are joined by way of others


@dataclass(frozen=True, eq=False)
class Graph:
    """Nodes (gates first, in order) with the best line between two of them."""

    land: Land
    near: Nearby
    gates: tuple[Gate, ...]
    points: Coordinates
    lines: BestLines

    @cached_property
    def roads(self) -> Roads:
        """What routes are sought on."""
        terminals = [gate.terminal for gate in self.gates]
        return roads_of(len(self.points), terminals, self.lines.first, self.lines.second)

    @cached_property
    def to_lay_ft(self) -> Coordinates:
        """Length that each line lays, bends counted as far as it is to be paved [ft]."""
        lines = self.lines
        share = lines.unpaved_ft / np.maximum(lines.length_ft, _EVEN_FT)
        return lines.unpaved_ft + TURN_FT * lines.turn * share

    @cached_property
    def entries_ft(self) -> Coordinates:
        """Of each gate, shape (gates, 3): the walk from the anchor, the part of it to be paved, and `shy_ft`."""
        return np.array([(gate.inside_ft, gate.stub_ft, gate.shy_ft) for gate in self.gates]).reshape(-1, 3)


def graph_of(land: Land, terminals: Sequence[Terminal], trips: Trips) -> Graph:
    """Graph over the gates of the terminals that trips join, and the corners of the ground."""
    links = links_of(land, terminals, trips)
    gates = (*gates_of(land, terminals, trips), *(gate for link in links for gate in (link.first, link.second)))
    free = len(gates) - 2 * len(links)
    corners = np.concatenate([turning_points(land.ground), _round_lawns(land), _on_paving(land)])
    points = np.concatenate([np.array([gate.at for gate in gates], dtype=float).reshape(-1, 2), corners])
    near = nearby(land.ground)
    lines = lines_between(near, points, _pairs(gates, free, points, trips)).and_also(_link_lines(links, points, free))
    return Graph(land, near, gates, points, best_lines(land, near, gates, points, lines, links=len(links)))


def _round_lawns(land: Land) -> Coordinates:
    """Points where a way turns round a lawn, half its width off the corners."""
    round_lawns = [lawn.buffer(land.width_ft / 2, join_style="mitre") for lawn in land.lawns]
    corners = shapely.get_coordinates(round_lawns)
    return np.asarray(corners[shapely.covers(land.ground, shapely.points(corners))])


def _on_paving(land: Land) -> Coordinates:
    """Points on the paving that is there, half a way's width off its edges, so that ways run along it."""
    inner = [part.buffer(TOLERANCE_FT - land.width_ft / 2, join_style="mitre") for part in land.there]
    points = shapely.get_coordinates(shapely.segmentize(np.array(inner, dtype=object), _ALONG_FT))
    return np.asarray(points[shapely.covers(land.ground, shapely.points(points))])


def _pairs(gates: Sequence[Gate], free: int, points: Coordinates, trips: Trips) -> NDArray[np.int64]:
    """Pairs of nodes to be joined: gates of terminals that trips join, gates and corners, corners that are near."""
    nodes = np.array([*range(free), *range(len(gates), len(points))], dtype=np.int64)
    owner = np.array([gate.terminal for gate in gates] + [-1] * (len(points) - len(gates)), dtype=np.int64)
    first, second = np.triu_indices(len(nodes), k=1)
    first, second = nodes[first], nodes[second]
    away = np.abs(points[first] - points[second]).max(axis=1)
    corners = (owner[first] < 0).astype(np.int64) + (owner[second] < 0)
    count = max(trips, default=0) + 1
    joined_by_trips = np.zeros((count, count), dtype=bool)
    for one, others in trips.items():
        joined_by_trips[one, sorted(others)] = True
    of_trips = joined_by_trips[owner[first], owner[second]]
    kept = np.select([corners == 2, corners == 1], [away <= _CORNERS_FT, True], of_trips)
    return np.stack([first[kept], second[kept]], axis=1)


def _link_lines(links: Sequence[Link], points: Coordinates, free: int) -> Lines:
    first = np.array([free + 2 * number for number in range(len(links))], dtype=np.int64)
    starts, ends = points[first], points[first + 1]
    return Lines(first, first + 1, np.stack([starts, ends, ends, ends], axis=1))
