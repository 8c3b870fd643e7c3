"""The graph that routes are chosen on: gates, turning corners and later branchings, joined by candidate lines."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.circulation.paving.candidates import Lines, lines_between, short_slants, turn_at, turns
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
TURN_FT: Final = 8.0
"""A bend, up to a right angle, counts as so much further way; common practice, no source: few bends."""


@dataclass(frozen=True, eq=False)
class Graph:
    """Nodes (gates first, in order) with the best line between two of them.

    Of each line: `length_ft`, `unpaved_ft` still to be paved, `lawn_ft` on lawns and their verges, and `turn`, the
    bends along it and between it and the gates at its ends.
    """

    land: Land
    near: Nearby
    gates: tuple[Gate, ...]
    points: Coordinates
    lines: Lines
    length_ft: Coordinates
    unpaved_ft: Coordinates
    lawn_ft: Coordinates
    turn: Coordinates

    @cached_property
    def roads(self) -> Roads:
        """What routes are sought on."""
        terminals = [gate.terminal for gate in self.gates]
        return roads_of(len(self.points), terminals, self.lines.first, self.lines.second)

    @cached_property
    def to_lay_ft(self) -> Coordinates:
        """Length that each line lays, bends counted as far as it is to be paved [ft]."""
        share = self.unpaved_ft / np.maximum(self.length_ft, _EVEN_FT)
        return self.unpaved_ft + TURN_FT * self.turn * share

    @cached_property
    def entries_ft(self) -> Coordinates:
        """Of each gate, shape (gates, 3): the walk from the anchor, the part of it to be paved, and `shy_ft`."""
        return np.array([(gate.inside_ft, gate.stub_ft, gate.shy_ft) for gate in self.gates]).reshape(-1, 3)


def joined(
    land: Land,
    near: Nearby,
    gates: tuple[Gate, ...],
    points: Coordinates,
    lines: Lines,
    *,
    links: int = 0,
) -> Graph:
    """Graph of gates, further points, and of the lines between each two nodes that with the least of length and turn,
    of those on the ground; the last of the lines, so many as there are `links`, are taken wherever they lie.
    """
    length, turn = lines.length_ft, _turn(gates, points, lines)
    likely = turn + short_slants(lines.corners, lines.steps_ft)
    pair = np.minimum(lines.first, lines.second) * len(points) + np.maximum(lines.first, lines.second)
    order = np.lexsort((length + TURN_FT * likely, pair))
    is_first = np.ones(len(order), dtype=bool)
    is_first[1:] = np.diff(pair[order]) != 0
    is_link = np.arange(len(order)) >= len(order) - links
    best = _first_on_ground(near, lines, order, is_first, is_link)
    lines = lines.only(best)
    on_lawns, on_paved, on_verges = land.areas.within_ft(lines.corners)
    unpaved = np.maximum(0.0, lines.steps_ft - on_lawns - on_paved)
    turn = turn[best] + short_slants(lines.corners, unpaved)
    return Graph(land, near, gates, points, lines, length[best], unpaved.sum(axis=1), on_verges.sum(axis=1), turn)


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


def graph_of(land: Land, terminals: Sequence[Terminal], trips: Trips) -> Graph:
    """Graph over the gates of the terminals that trips join, and the corners of the ground."""
    links = links_of(land, terminals, trips)
    gates = (*gates_of(land, terminals, trips), *(gate for link in links for gate in (link.first, link.second)))
    free = len(gates) - 2 * len(links)
    corners = np.concatenate([turning_points(land.ground), _round_lawns(land), _on_paving(land)])
    points = np.concatenate([np.array([gate.at for gate in gates], dtype=float).reshape(-1, 2), corners])
    near = nearby(land.ground)
    lines = lines_between(near, points, _pairs(gates, free, points, trips))
    return joined(land, near, gates, points, _with(lines, _link_lines(links, points, free)), links=len(links))


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


def branched(graph: Graph, chains: Iterable[Coordinates], ends: Sequence[int]) -> Graph:
    """Graph with branchings on chains (corners of routes, shape (n, 2)): where the lines out of other ends meet them
    square or at 45 degrees; those are joined along their chain, and with the ends.
    """
    added: list[Coordinates] = []
    pairs: list[tuple[int, int]] = []
    count = len(graph.points)
    for chain in chains:
        stops = _stops(chain, graph.points[list(ends)])
        numbers = range(count, count + len(stops))
        pairs += pairwise(numbers)
        pairs += [(end, number) for end in ends for number in numbers]
        added.append(stops)
        count += len(stops)
    points = np.concatenate([graph.points, *added])
    new = lines_between(graph.near, points, np.array(pairs, dtype=np.int64).reshape(-1, 2))
    more = joined(graph.land, graph.near, graph.gates, points, new)
    measures = (
        np.concatenate(both)
        for both in (
            (graph.length_ft, more.length_ft),
            (graph.unpaved_ft, more.unpaved_ft),
            (graph.lawn_ft, more.lawn_ft),
            (graph.turn, more.turn),
        )
    )
    return Graph(graph.land, graph.near, graph.gates, points, _with(graph.lines, more.lines), *measures)


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


def _with(lines: Lines, more: Lines) -> Lines:
    return Lines(
        np.concatenate([lines.first, more.first]),
        np.concatenate([lines.second, more.second]),
        np.concatenate([lines.corners, more.corners]),
    )


def _stops(chain: Coordinates, ends: Coordinates) -> Coordinates:
    """Points along a chain, in order: its corners, and where lines out of the ends meet it."""
    found = [chain[0]]
    for start, end in pairwise(chain):
        length = float(np.hypot(*(end - start)))
        if length < 1e-6:
            continue
        heading = (end - start) / length
        along = (ends - start) @ heading
        across = np.abs((ends - start) @ np.array([-heading[1], heading[0]]))
        wanted = np.concatenate([along, along - across, along + across])
        inner = np.unique(np.round(wanted[(wanted > 1.0) & (wanted < length - 1.0)], 3))
        found += [start + share * heading for share in inner]
        found.append(end)
    return np.array(found)
