"""Which lines are paved: each trip takes the cheapest route, again and again while others' paving makes it cheaper."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Final

import numpy as np

from optimizer.circulation.paving.graph import TURN_FT, Graph, branched
from optimizer.circulation.visibility import Coordinates
from optimizer.site import Point

_ROUNDS: Final = 3
_FEWEST_TO_SHARE: Final = 2
_NEVER: Final = 1e6  # money that stands for a trip without a route
_ROUND_LAWNS: Final = 3.0  # a foot of main way on a lawn counts as so many more; common practice, no source
MAIN_COUNT: Final = 8.0
"""A way walked at least so often a gathering is a main way; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Demand:
    """Walking between two terminals, by number, so many times a gathering."""

    start: int
    end: int
    count: float


@dataclass(frozen=True, slots=True)
class MoneyPerFoot:
    """What a foot counts in money: walked once, and paved."""

    walking: float
    paving: float


@dataclass(frozen=True, slots=True)
class Route:
    """A route from anchor to anchor [ft]; all but its first and last step lies outside what it joins."""

    points: tuple[Point, ...]

    @property
    def outside(self) -> tuple[Point, ...]:
        """Corners from edge to edge."""
        return self.points[1:-1]


_Found = tuple[list[int] | None, list[int]]
"""Nodes and lines of a route; no nodes where nothing joins its ends."""


@dataclass
class _Taken:
    """Routes so far: nodes and lines of each demand."""

    nodes: list[list[int] | None] = field(default_factory=list)
    lines: list[list[int]] = field(default_factory=list)


def routes_of(graph: Graph, demands: Sequence[Demand], per_foot: MoneyPerFoot) -> tuple[Route | None, ...]:
    """Route of each demand; None where no line joins its ends.

    Two beginnings are tried: each trip by itself, and one after the other on what is paved by then. On both branchings
    are set and every trip is laid anew in turn; the cheaper end counts.
    """
    order = sorted(range(len(demands)), key=lambda number: -demands[number].count)
    choices = _Choices(graph, demands, per_foot)
    alone, in_turn = (_begun(choices, order, alone=alone) for alone in (True, False))
    ends = [_improved(choices, taken, order) for taken in ([alone] if alone == in_turn else [alone, in_turn])]
    best, taken = min(ends, key=lambda end: _cost(end[0], end[1], demands, per_foot))
    return tuple(_route(best, taken, number) for number in range(len(demands)))


def lawn_rate(count: float, per_foot: MoneyPerFoot) -> float:
    """What a foot on a lawn counts in money, walked so often, beyond the walk; a way of few trips may cross it."""
    return 0.0 if count < MAIN_COUNT else _ROUND_LAWNS * (per_foot.walking * count + per_foot.paving)


def _begun(choices: "_Choices", order: Sequence[int], *, alone: bool) -> _Taken:
    taken = _Taken([None] * len(order), [[] for _ in order])
    for number in order:
        paved = set() if alone else {line for lines in taken.lines for line in lines}
        taken.nodes[number], taken.lines[number] = choices.cheapest(number, paved)
    return taken


def _improved(choices: "_Choices", taken: _Taken, order: Sequence[int]) -> tuple[Graph, _Taken]:
    """Graph with branchings on what is taken, and the trips laid on it until none finds a cheaper route."""
    graph = choices.graph
    chains = [_chain(graph, taken, number) for number in order if taken.nodes[number]]
    if len(chains) < _FEWEST_TO_SHARE:
        return graph, taken
    ends = sorted({node for nodes in taken.nodes if nodes for node in (nodes[0], nodes[-1])})
    graph = branched(graph, chains, ends)
    choices = replace(choices, graph=graph, known={})
    taken = _begun(choices, order, alone=True)
    for _ in range(_ROUNDS):
        before = [list(lines) for lines in taken.lines]
        for number in order:
            others = {line for other, lines in enumerate(taken.lines) if other != number for line in lines}
            taken.nodes[number], taken.lines[number] = choices.cheapest(number, others)
        if before == taken.lines:
            break
    return graph, taken


def _cost(graph: Graph, taken: _Taken, demands: Sequence[Demand], per_foot: MoneyPerFoot) -> float:
    """Walking and paving of all routes in money; a trip without one counts more than any that has one."""
    walked = sum(
        (per_foot.walking * demand.count * graph.length_ft + lawn_rate(demand.count, per_foot) * graph.lawn_ft)[
            lines
        ].sum()
        if nodes
        else _NEVER
        for demand, nodes, lines in zip(demands, taken.nodes, taken.lines, strict=True)
    )
    used = sorted({line for lines in taken.lines for line in lines})
    return float(walked + per_foot.paving * graph.to_lay_ft[used].sum())


@dataclass(frozen=True, slots=True)
class _Choices:
    """Cheapest routes of the demands over one graph, each sought once: `known` by demand and what others pave."""

    graph: Graph
    demands: Sequence[Demand]
    per_foot: MoneyPerFoot
    known: dict[tuple[int, frozenset[int]], _Found] = field(default_factory=dict)

    def cheapest(self, number: int, paved: set[int]) -> _Found:
        """Nodes and lines of a demand's cheapest route, given the lines that others pave."""
        key = (number, frozenset(paved))
        if key not in self.known:
            self.known[key] = _cheapest(self.graph, self.demands[number], self.per_foot, sorted(paved))
        return self.known[key]


def _cheapest(graph: Graph, demand: Demand, per_foot: MoneyPerFoot, paved: Sequence[int]) -> _Found:
    walking = per_foot.walking * demand.count
    to_lay = graph.to_lay_ft.copy()
    to_lay[paved] = 0.0
    weights = (
        lawn_rate(demand.count, per_foot) * graph.lawn_ft
        + walking * (graph.length_ft + TURN_FT * graph.turn)
        + per_foot.paving * to_lay
    )
    inside_ft, stub_ft, shy_ft = graph.entries_ft.T
    entries = walking * inside_ft + per_foot.paving * stub_ft + (walking + per_foot.paving) * shy_ft
    return graph.roads.cheapest(weights, entries, demand.start, demand.end) or (None, [])


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
    chain = [(float(x), float(y)) for x, y in _chain(graph, taken, number)]
    return Route((*start.inside, *chain, *end.inside[::-1]))
