"""The cheapest routes of trips over one graph, sought anew only where what others pave may have made one cheaper."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np

from optimizer.circulation.paving.best_lines import TURN_FT
from optimizer.circulation.paving.graph import Graph
from optimizer.circulation.paving.roads import LEAST
from optimizer.circulation.visibility import Coordinates

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


def lawn_rate(count: float, per_foot: MoneyPerFoot) -> float:
    """What a foot on a lawn counts in money, walked so often, beyond the walk; a way of few trips may cross it."""
    return 0.0 if count < MAIN_COUNT else _ROUND_LAWNS * (per_foot.walking * count + per_foot.paving)


@dataclass(frozen=True, slots=True, eq=False)
class _Costs:
    """What lines cost whoever walks them so many times: to lay and walk, on what is paved, and by steps of `Roads`;
    and what gates cost.
    """

    to_lay: Coordinates
    paved: Coordinates
    steps: Coordinates
    gates: Coordinates


@dataclass(frozen=True, slots=True, eq=False)
class _Known:
    """A route, no nodes where nothing joins its ends, and what others `paved` when it was the cheapest, if it was."""

    nodes: list[int] | None = None
    lines: Sequence[int] = ()
    paved: frozenset[int] | None = None


@dataclass(frozen=True, slots=True)
class Choices:
    """Cheapest routes of demands over one graph, with what is known; costs are by how often a trip is walked."""

    graph: Graph
    demands: Sequence[Demand]
    per_foot: MoneyPerFoot
    _known: dict[int, _Known] = field(default_factory=dict)
    _costs: dict[float, _Costs] = field(default_factory=dict)

    def over(self, graph: Graph, nodes: Sequence[list[int] | None], lines: Sequence[Sequence[int]]) -> "Choices":
        """The same over a graph that has more lines, with routes of the demands that need not be the cheapest there."""
        known = {number: _Known(*route) for number, route in enumerate(zip(nodes, lines, strict=True))}
        return Choices(graph, self.demands, self.per_foot, known)

    def cheapest(self, number: int, paved: frozenset[int]) -> tuple[list[int] | None, Sequence[int]]:
        """Nodes and lines of a demand's cheapest route, given the lines that others pave; no nodes where none is."""
        known = self._known.get(number, _Known())
        if self._may_be_another(paved, known):
            known = self._known[number] = self._sought(number, paved, known)
        return known.nodes, known.lines

    def _may_be_another(self, paved: frozenset[int], known: _Known) -> bool:
        """Not where others pave less than before, and none of that is walked on: all else only got dearer."""
        before = known.paved
        return before is None or not paved <= before or not (before - paved).isdisjoint(known.lines)

    def _sought(self, number: int, paved: frozenset[int], known: _Known) -> _Known:
        demand, roads, costs = self.demands[number], self.graph.roads, self._costs_of(self.demands[number].count)
        there = np.array(sorted(paved), dtype=np.int64)
        steps = costs.steps.copy()
        steps[roads.ways[:, there]] = np.maximum(costs.paved[there], LEAST)
        at_most = self._cost(known, costs, paved)
        nodes, lines = roads.cheapest(steps, costs.gates, (demand.start, demand.end), at_most=at_most) or (None, [])
        return _Known(nodes, lines, paved)

    def _cost(self, known: _Known, costs: _Costs, paved: frozenset[int]) -> float:
        """What a route costs where others pave some lines, no step nothing at all; infinite where there is none."""
        if known.nodes is None:
            return np.inf
        lines = ((costs.paved if line in paved else costs.to_lay)[line] for line in known.lines)
        gates = (costs.gates[known.nodes[0]], costs.gates[known.nodes[-1]])
        return sum(max(LEAST, float(cost)) for cost in (*lines, *gates))

    def _costs_of(self, count: float) -> _Costs:
        if count not in self._costs:
            lines, walking, paving = self.graph.lines, self.per_foot.walking * count, self.per_foot.paving
            over_lawns = lawn_rate(count, self.per_foot) * lines.lawn_ft
            paved = over_lawns + walking * (lines.length_ft + TURN_FT * lines.turn)
            to_lay = paved + paving * self.graph.to_lay_ft
            inside_ft, stub_ft, shy_ft = self.graph.entries_ft.T
            gates = walking * inside_ft + paving * stub_ft + (walking + paving) * shy_ft
            self._costs[count] = _Costs(to_lay, paved, self.graph.roads.costs(to_lay), gates)
        return self._costs[count]
