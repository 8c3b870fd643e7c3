"""Branchings on routes, for ways that share paving: points where others may join, and the lines that lead there."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.circulation.paving.best_lines import BestLines, best_lines
from optimizer.circulation.paving.candidates import lines_between
from optimizer.circulation.paving.graph import Graph
from optimizer.circulation.visibility import Coordinates

_SAME_FT: Final = 1e-6
_BESIDE_FT: Final = 1.0  # so near a corner of a route nothing else joins it


@dataclass(frozen=True, slots=True, eq=False)
class Trunks:
    """What may be branched on: routes by their corners, shape (n, 2) each, and the nodes where routes end."""

    chains: Sequence[Coordinates]
    ends: NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class _Branches:
    """Points to be added to a graph, and pairs of numbers, shape (n, 2), to be joined: of its nodes, then of these."""

    points: Coordinates
    pairs: NDArray[np.int64]


def branched(graph: Graph, trunks: Sequence[Trunks]) -> list[Graph]:
    """For each of the trunks the graph with branchings on their chains: where the lines out of other ends meet them
    square or at 45 degrees; those are joined along their chain, and with the ends.

    Routes run along each other and most branchings are many times there: lines between the same points are made once.
    """
    found = [_branches(graph, one) for one in trunks]
    places = np.concatenate([one.points for one in found])
    _, first, same = np.unique(places[:, 0] + 1j * places[:, 1], return_index=True, return_inverse=True)
    points = np.concatenate([graph.points, places[first]])
    old, starts = np.arange(len(graph.points)), np.cumsum([len(one.points) for one in found])
    numbers = [np.append(old, len(old) + part) for part in np.split(same, starts[:-1])]
    keys = [_keys(known[one.pairs], len(points)) for known, one in zip(numbers, found, strict=True)]
    pairs = np.stack(np.divmod(np.unique(np.concatenate(keys)), len(points)), axis=1)
    lines = lines_between(graph.near, points, pairs)
    best = best_lines(graph.land, graph.near, graph.gates, points, lines)
    there = _keys(np.stack([best.first, best.second], axis=1), len(points))
    numbers = [np.where(np.isin(key, there), np.searchsorted(there, key), -1) for key in keys]
    return [_with(graph, one, best, number) for one, number in zip(found, numbers, strict=True)]


def _keys(pairs: NDArray[np.int64], size: int) -> NDArray[np.int64]:
    """One number for each pair of numbers under a size, in the order of pairs."""
    return np.asarray(pairs[:, 0] * size + pairs[:, 1])


def _branches(graph: Graph, trunks: Trunks) -> _Branches:
    stops = [_stops(chain, graph.points[trunks.ends]) for chain in trunks.chains]
    numbers = np.arange(len(graph.points), len(graph.points) + sum(map(len, stops)))
    along = np.stack([numbers[:-1], numbers[1:]], axis=1)
    last = np.cumsum([len(part) for part in stops])[:-1] - 1  # of one chain, followed by the first of the next
    to_ends = np.stack([np.tile(trunks.ends, len(numbers)), np.repeat(numbers, len(trunks.ends))], axis=1)
    return _Branches(np.concatenate(stops), np.concatenate([np.delete(along, last, axis=0), to_ends]))


def _with(graph: Graph, branches: _Branches, best: BestLines, number: NDArray[np.int64]) -> Graph:
    """Graph with branches: of their pairs the number of the best line, -1 where there is none."""
    points = np.concatenate([graph.points, branches.points])
    order = np.argsort(_keys(branches.pairs, len(points)))
    order = order[number[order] >= 0]
    lines = best.of(number[order], *branches.pairs[order].T)
    return replace(graph, points=points, lines=graph.lines.and_also(lines))


def _stops(chain: Coordinates, ends: Coordinates) -> Coordinates:
    """Points along a chain, in order: its corners, and where lines out of the ends meet it."""
    found = [chain[0]]
    for start, end in pairwise(chain):
        length = float(np.hypot(*(end - start)))
        if length < _SAME_FT:
            continue
        heading = (end - start) / length
        along = (ends - start) @ heading
        across = np.abs((ends - start) @ np.array([-heading[1], heading[0]]))
        wanted = np.concatenate([along, along - across, along + across])
        inner = np.unique(np.round(wanted[(wanted > _BESIDE_FT) & (wanted < length - _BESIDE_FT)], 3))
        found += [start + share * heading for share in inner]
        found.append(end)
    return np.array(found)
