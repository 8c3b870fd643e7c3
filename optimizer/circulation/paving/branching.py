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
    points, same = np.unique(np.concatenate([one.points for one in found]), axis=0, return_inverse=True)
    count, starts = len(graph.points), np.cumsum([0, *(len(one.points) for one in found)])
    numbers = [np.append(np.arange(count), count + part) for part in np.split(same.reshape(-1), starts[1:-1])]
    pairs = [known[one.pairs] for known, one in zip(numbers, found, strict=True)]
    best = _lines(graph, np.concatenate([graph.points, points]), np.unique(np.concatenate(pairs), axis=0))
    return [_with(graph, one, known, best) for one, known in zip(found, pairs, strict=True)]


def _branches(graph: Graph, trunks: Trunks) -> _Branches:
    stops = [_stops(chain, graph.points[trunks.ends]) for chain in trunks.chains]
    numbers = np.arange(len(graph.points), len(graph.points) + sum(map(len, stops)))
    along = np.stack([numbers[:-1], numbers[1:]], axis=1)
    last = np.cumsum([len(part) for part in stops])[:-1] - 1  # of one chain, followed by the first of the next
    to_ends = np.stack([np.tile(trunks.ends, len(numbers)), np.repeat(numbers, len(trunks.ends))], axis=1)
    return _Branches(np.concatenate(stops), np.concatenate([np.delete(along, last, axis=0), to_ends]))


def _lines(graph: Graph, points: Coordinates, pairs: NDArray[np.int64]) -> BestLines:
    return best_lines(graph.land, graph.near, graph.gates, points, lines_between(graph.near, points, pairs))


def _with(graph: Graph, branches: _Branches, known: NDArray[np.int64], best: BestLines) -> Graph:
    """Graph with branches, of which these pairs are `known` among the best lines, or not at all, in order of pairs."""
    order = np.lexsort(branches.pairs.T[::-1])
    pairs, known = branches.pairs[order], known[order]
    size = int(known.max(initial=0)) + 1
    wanted, there = known @ (size, 1), best.first * size + best.second
    place = np.searchsorted(there, wanted)
    is_there = np.append(there, -1)[place] == wanted
    lines = best.of(place[is_there], *pairs[is_there].T)
    return replace(graph, points=np.concatenate([graph.points, branches.points]), lines=graph.lines.and_also(lines))


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
