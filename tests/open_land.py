"""Open land with points to be joined by paved ways, for tests."""

from collections.abc import Sequence
from itertools import combinations, pairwise
from math import dist

import numpy as np
from shapely import box

from optimizer.circulation.paving.best_lines import best_lines
from optimizer.circulation.paving.candidates import lines_between
from optimizer.circulation.paving.choices import Demand, MoneyPerFoot
from optimizer.circulation.paving.gates import Gate
from optimizer.circulation.paving.graph import Graph
from optimizer.circulation.paving.land import Land
from optimizer.circulation.paving.legs import Leg, legs_of
from optimizer.circulation.paving.nearby import nearby
from optimizer.circulation.paving.routes import routes_of

PAVING_ALONE = MoneyPerFoot(walking=1e-3, paving=100.0)
Point = tuple[float, float]


def open_land(*, size_ft: float = 200.0) -> Land:
    """A square with its middle at (0, 0), nothing on it."""
    ground = box(-size_ft, -size_ft, size_ft, size_ft)
    return Land(ground, ground, 4.0, (), ())


def graph_over(points: Sequence[Point], land: Land | None = None) -> Graph:
    """Graph whose terminals are points."""
    land = land or open_land()
    gates = tuple(Gate(number, (point,), point, (0.0, 0.0)) for number, point in enumerate(points))
    places = np.array(points, dtype=float)
    pairs = np.array(list(combinations(range(len(points)), 2)), dtype=np.int64)
    near = nearby(land.ground)
    return Graph(land, near, gates, places, best_lines(land, near, gates, places, lines_between(near, places, pairs)))


def network_over(
    points: Sequence[Point], pairs: Sequence[tuple[int, int]], per_foot: MoneyPerFoot = PAVING_ALONE
) -> tuple[Leg, ...]:
    """Legs that join pairs of points, by number."""
    graph = graph_over(points)
    routes = routes_of(graph, [Demand(a, b, 10.0) for a, b in pairs], per_foot)
    lines = {(str(a), str(b)): route.outside for (a, b), route in zip(pairs, routes, strict=True) if route}
    assert len(lines) == len(pairs)
    return legs_of(graph.land, lines, dict.fromkeys(lines, 10.0), ())


def length_of(legs: Sequence[Leg]) -> float:
    """Length of all legs [ft]."""
    return sum(dist(a, b) for leg in legs for a, b in pairwise(leg.points))
