"""Which lines are paved: each trip takes the cheapest route, again and again while others' paving makes it cheaper."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import chain, pairwise
from typing import Final

import numpy as np

from optimizer.circulation.paving.branching import Trunks, branched
from optimizer.circulation.paving.choices import Choices, Demand, MoneyPerFoot, lawn_rate
from optimizer.circulation.paving.graph import Graph
from optimizer.circulation.visibility import Coordinates
from optimizer.site import Point

_ROUNDS: Final = 3
_FEWEST_TO_SHARE: Final = 2
_NEVER: Final = 1e6  # money that stands for a trip without a route


@dataclass(frozen=True, slots=True)
class Route:
    """A route from anchor to anchor [ft]; all but its first and last step lies outside what it joins."""

    points: tuple[Point, ...]

    @property
    def outside(self) -> tuple[Point, ...]:
        """Corners from edge to edge."""
        return self.points[1:-1]


@dataclass
class _Taken:
    """Routes so far: nodes and lines of each demand."""

    nodes: list[list[int] | None] = field(default_factory=list)
    lines: list[Sequence[int]] = field(default_factory=list)


def routes_of(graph: Graph, demands: Sequence[Demand], per_foot: MoneyPerFoot) -> tuple[Route | None, ...]:
    """Route of each demand; None where no line joins its ends.

    Two beginnings are tried: each trip by itself, and one after the other on what is paved by then. On both branchings
    are set and every trip is laid anew in turn; the cheaper end counts.
    """
    order = sorted(range(len(demands)), key=lambda number: -demands[number].count)
    choices = Choices(graph, demands, per_foot)
    alone, in_turn = (_begun(choices, order, alone=alone) for alone in (True, False))
    ends = _improved(choices, [alone] if alone == in_turn else [alone, in_turn], order)
    best, taken = min(ends, key=lambda end: _cost(end[0], end[1], demands, per_foot))
    return tuple(_route(best, taken, number) for number in range(len(demands)))


def _begun(choices: Choices, order: Sequence[int], *, alone: bool) -> _Taken:
    taken = _Taken([None] * len(order), [[] for _ in order])
    for number in order:
        paved = frozenset() if alone else frozenset(chain.from_iterable(taken.lines))
        taken.nodes[number], taken.lines[number] = choices.cheapest(number, paved)
    return taken


def _improved(choices: Choices, beginnings: Sequence[_Taken], order: Sequence[int]) -> Iterator[tuple[Graph, _Taken]]:
    """For each beginning the graph with branchings on it, and the trips laid on that."""
    graph = choices.graph
    if sum(nodes is not None for nodes in beginnings[0].nodes) < _FEWEST_TO_SHARE:
        yield graph, beginnings[0]
        return
    trunks = [_trunks(graph, taken, order) for taken in beginnings]
    for taken, with_branches in zip(beginnings, branched(graph, trunks), strict=True):
        yield with_branches, _settled(choices.over(with_branches, taken.nodes, taken.lines), order)


def _trunks(graph: Graph, taken: _Taken, order: Sequence[int]) -> Trunks:
    chains = [_chain(graph, taken, number) for number in order if taken.nodes[number]]
    ends = {node for nodes in taken.nodes if nodes for node in (nodes[0], nodes[-1])}
    return Trunks(chains, np.array(sorted(ends), dtype=np.int64))


def _settled(choices: Choices, order: Sequence[int]) -> _Taken:
    """Trips laid anew in turn until none finds a cheaper route."""
    taken = _begun(choices, order, alone=True)
    for _ in range(_ROUNDS):
        before = list(taken.lines)
        for number in order:
            others = frozenset(chain.from_iterable(taken.lines[:number] + taken.lines[number + 1 :]))
            taken.nodes[number], taken.lines[number] = choices.cheapest(number, others)
        if before == taken.lines:
            break
    return taken


def _cost(graph: Graph, taken: _Taken, demands: Sequence[Demand], per_foot: MoneyPerFoot) -> float:
    """Walking and paving of all routes in money; a trip without one counts more than any that has one."""
    walked = sum(
        (
            per_foot.walking * demand.count * graph.lines.length_ft[lines]
            + lawn_rate(demand.count, per_foot) * graph.lines.lawn_ft[lines]
        ).sum()
        if nodes
        else _NEVER
        for demand, nodes, lines in zip(demands, taken.nodes, taken.lines, strict=True)
    )
    used = sorted({line for lines in taken.lines for line in lines})
    return float(walked + per_foot.paving * graph.to_lay_ft[used].sum())


def _chain(graph: Graph, taken: _Taken, number: int) -> Coordinates:
    """Corners of a route from gate to gate, shape (n, 2)."""
    nodes = taken.nodes[number]
    assert nodes is not None
    corners = [graph.points[nodes[0]]]
    for node, line in zip(nodes[:-1], taken.lines[number], strict=True):
        shape = graph.lines.corners[line]
        corners += list(shape[1:] if graph.lines.first[line] == node else shape[::-1][1:])
    kept = [corners[0], *(b for a, b in pairwise(corners) if np.abs(a - b).sum() > 1e-6)]
    return np.array(kept)


def _route(graph: Graph, taken: _Taken, number: int) -> Route | None:
    nodes = taken.nodes[number]
    if nodes is None:
        return None
    start, end = graph.gates[nodes[0]], graph.gates[nodes[-1]]
    corners = [(float(x), float(y)) for x, y in _chain(graph, taken, number)]
    return Route((*start.inside, *corners, *end.inside[::-1]))
