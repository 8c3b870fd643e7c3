"""Which lines are paved: each trip takes the cheapest route, again and again while others' paving makes it cheaper."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import chain, pairwise
from typing import Final

import numpy as np

from optimizer.circulation.paving.best_lines import TURN_FT
from optimizer.circulation.paving.branching import Trunks, branched
from optimizer.circulation.paving.graph import Graph
from optimizer.circulation.paving.roads import LEAST
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
    ends = _improved(choices, [alone] if alone == in_turn else [alone, in_turn], order)
    best, taken = min(ends, key=lambda end: _cost(end[0], end[1], demands, per_foot))
    return tuple(_route(best, taken, number) for number in range(len(demands)))


def lawn_rate(count: float, per_foot: MoneyPerFoot) -> float:
    """What a foot on a lawn counts in money, walked so often, beyond the walk; a way of few trips may cross it."""
    return 0.0 if count < MAIN_COUNT else _ROUND_LAWNS * (per_foot.walking * count + per_foot.paving)


def _begun(choices: "_Choices", order: Sequence[int], *, alone: bool) -> _Taken:
    taken = _Taken([None] * len(order), [[] for _ in order])
    for number in order:
        paved = frozenset() if alone else frozenset(chain.from_iterable(taken.lines))
        taken.nodes[number], taken.lines[number] = choices.cheapest(number, paved)
    return taken


def _improved(
    choices: "_Choices", beginnings: Sequence[_Taken], order: Sequence[int]
) -> Iterator[tuple[Graph, _Taken]]:
    """For each beginning the graph with branchings on it, and the trips laid on that."""
    graph = choices.graph
    if sum(nodes is not None for nodes in beginnings[0].nodes) < _FEWEST_TO_SHARE:
        yield graph, beginnings[0]
        return
    trunks = [_trunks(graph, taken, order) for taken in beginnings]
    for taken, with_branches in zip(beginnings, branched(graph, trunks), strict=True):
        yield with_branches, _settled(choices.over(with_branches, taken), order)


def _trunks(graph: Graph, taken: _Taken, order: Sequence[int]) -> Trunks:
    chains = [_chain(graph, taken, number) for number in order if taken.nodes[number]]
    ends = {node for nodes in taken.nodes if nodes for node in (nodes[0], nodes[-1])}
    return Trunks(chains, np.array(sorted(ends), dtype=np.int64))


def _settled(choices: "_Choices", order: Sequence[int]) -> _Taken:
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


@dataclass(frozen=True, slots=True, eq=False)
class _Costs:
    """What lines cost whoever walks them so many times: to lay and walk, on what is paved, and by steps of `Roads`."""

    to_lay: Coordinates
    paved: Coordinates
    steps: Coordinates


@dataclass(frozen=True, slots=True)
class _Choices:
    """Cheapest routes of the demands over one graph.

    `known` has of each demand the last route and what others paved then, None where it was not the cheapest then;
    `costs` is by how often a trip is walked.
    """

    graph: Graph
    demands: Sequence[Demand]
    per_foot: MoneyPerFoot
    known: dict[int, tuple[frozenset[int] | None, _Found]] = field(default_factory=dict)
    costs: dict[float, _Costs] = field(default_factory=dict)

    def over(self, graph: Graph, taken: _Taken) -> "_Choices":
        """The same over a graph that has more lines, with routes that need not be the cheapest there."""
        routes = enumerate(zip(taken.nodes, taken.lines, strict=True))
        return _Choices(graph, self.demands, self.per_foot, {number: (None, route) for number, route in routes})

    def cheapest(self, number: int, paved: frozenset[int]) -> _Found:
        """Nodes and lines of a demand's cheapest route, given the lines that others pave."""
        before, (nodes, lines) = self.known.get(number, (None, (None, [])))
        # Where others pave less than before, and what they pave no more is not walked on, all else only got dearer.
        if before is None or not paved <= before or not (before - paved).isdisjoint(lines):
            self.known[number] = (paved, self._sought(number, sorted(paved), nodes, lines))
        return self.known[number][1]

    def _sought(self, number: int, paved: Sequence[int], nodes: list[int] | None, lines: Sequence[int]) -> _Found:
        """The same, knowing a route, if there are nodes: nothing is dearer than that."""
        demand, roads = self.demands[number], self.graph.roads
        costs, gates = self._costs(demand.count), self._gates(demand.count)
        steps, line_costs = costs.steps.copy(), costs.to_lay.copy()
        line_costs[paved] = costs.paved[paved]
        steps[roads.ways[:, paved]] = np.maximum(costs.paved[paved], LEAST)
        at_most = line_costs[lines].sum() + gates[[nodes[0], nodes[-1]]].sum() if nodes else np.inf
        return roads.cheapest(steps, gates, (demand.start, demand.end), at_most=at_most) or (None, [])

    def _costs(self, count: float) -> _Costs:
        if count not in self.costs:
            lines, walking = self.graph.lines, self.per_foot.walking * count
            over_lawns = lawn_rate(count, self.per_foot) * lines.lawn_ft
            on_paved = over_lawns + walking * (lines.length_ft + TURN_FT * lines.turn)
            to_lay = on_paved + self.per_foot.paving * self.graph.to_lay_ft
            self.costs[count] = _Costs(to_lay, on_paved, self.graph.roads.costs(to_lay))
        return self.costs[count]

    def _gates(self, count: float) -> Coordinates:
        walking, paving = self.per_foot.walking * count, self.per_foot.paving
        inside_ft, stub_ft, shy_ft = self.graph.entries_ft.T
        return np.asarray(walking * inside_ft + paving * stub_ft + (walking + paving) * shy_ft)


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
