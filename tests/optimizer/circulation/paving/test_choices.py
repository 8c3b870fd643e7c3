"""Branchings made at once, and routes that are not sought anew, are those that there would be one by one."""

import random

import numpy as np
import pytest

from optimizer.circulation.paving.branching import Trunks, branched
from optimizer.circulation.paving.choices import Choices, Demand, MoneyPerFoot
from tests.open_land import graph_over

POINTS = [(0.0, 0.0), (40.0, 12.0), (31.0, 44.0), (7.0, 29.0), (52.0, 3.0)]
GRAPH = graph_over(POINTS)
TRUNKS = (
    Trunks([np.array([(0.0, 0.0), (40.0, 0.0), (40.0, 12.0)]), np.array([(0.0, 0.0), (40.0, 0.0)])], np.array([0, 1, 2])),
    Trunks([np.array([(0.0, 0.0), (12.0, 12.0), (40.0, 12.0)])], np.array([1, 3, 4])),
)  # fmt: skip


def parts(graph):
    """Points and lines of a graph, with what lines measure."""
    lines = graph.lines
    return graph.points, lines.first, lines.second, lines.corners, lines.length_ft, lines.unpaved_ft, lines.turn


def test_branchings_made_at_once_are_those_made_alone():
    """Two sets of trunks, with a stretch that is there twice: points, lines and measures, in the same order."""
    for at_once, trunks in zip(branched(GRAPH, TRUNKS), TRUNKS, strict=True):
        (alone,) = branched(GRAPH, [trunks])
        assert len(alone.lines.first) > len(GRAPH.lines.first)
        for one, other in zip(parts(at_once), parts(alone), strict=True):
            np.testing.assert_array_equal(one, other)


@pytest.mark.parametrize("seed", range(12))
def test_what_is_known_of_routes_never_hides_a_cheaper_one(seed):
    """Whatever others pave, more or less than before, in turn: what a route costs is what it does when sought afresh."""
    graph, draw = branched(GRAPH, TRUNKS)[0], random.Random(seed)
    demands = [Demand(0, 1, 6), Demand(2, 4, 6), Demand(3, 1, 2)]
    choices, per_foot = Choices(graph, demands, MoneyPerFoot(1, 20)), MoneyPerFoot(1, 20)
    numbers = range(len(graph.lines.first))
    paved = frozenset(draw.sample(numbers, 40))
    for _ in range(12):
        paved = paved - set(draw.sample(sorted(paved), min(5, len(paved)))) | set(
            draw.sample(numbers, draw.choice((0, 0, 9)))
        )
        for number, demand in enumerate(demands):
            costs = [
                _cost(graph, *one.cheapest(number, paved), demand, per_foot, paved)
                for one in (choices, Choices(graph, demands, per_foot))
            ]
            assert costs[0] == pytest.approx(costs[1])


def _cost(graph, nodes, lines, demand, per_foot, paved):
    """Money of a route between points, which are their own gates: every foot walked, with its bends, and the new laid."""
    assert nodes[0] == demand.start
    assert nodes[-1] == demand.end
    walked = sum(graph.lines.length_ft[line] + 8.0 * graph.lines.turn[line] for line in lines)
    laid = sum(graph.to_lay_ft[line] for line in lines if line not in paved)
    return per_foot.walking * demand.count * walked + per_foot.paving * laid
