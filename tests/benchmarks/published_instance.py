"""A published instance in the engine's own terms: masks, stamps and contacts, as any yard has."""

import math
from itertools import combinations

import numpy as np

from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Contact
from optimizer.engine.problem import Guide, Problem, ProblemRoom, RoomPair
from optimizer.engine.terms import Order
from optimizer.engine.terms.walking import Walking

SCALE = 100
"""Whole losses for each unit of flow and half step."""
NEVER_TOUCHING = 10**6


def problem_of(data: dict, container: dict) -> Problem:
    """The engine's problem of a file's rooms in a container."""
    lattice = _lattice(container, data["grid"])
    rooms = tuple(_room(number, size, container, lattice) for number, size in enumerate(data["rooms"]))
    contact = Contact(may_overlap=False, gap=round(data["gap"] / data["grid"]), share=NEVER_TOUCHING)
    flows = {(a, b): Walking(round(SCALE * flow)) for a, b, flow in data["flows"]}
    pairs = tuple(
        RoomPair(a, b, contact, (flows[a, b],) if (a, b) in flows else (), ())
        for a, b in combinations(range(len(rooms)), 2)
    )
    return Problem(
        context=Context(scenario=None, rooms=(), pose=None, site=None, lattice=lattice),  # type: ignore[arg-type]
        rooms=rooms,
        pairs=pairs,
        pulls=(),
        order=Order.over(((), ()), (lattice.columns + 1, lattice.rows + 1), rate=0, disorder_rate=0),
        amounts=(),
        rings=(),
        reach=None,
        guide=Guide((), 0),
    )


def _lattice(container: dict, step: float) -> Lattice:
    low = container.get("rectangle_from", [0.0, 0.0])
    high = container.get("rectangle_to") or container["rectangle"]
    columns, rows = (round((end - start) / step) for start, end in zip(low, high, strict=True))
    return Lattice(step, low[0], low[1], columns, rows)


def _room(number: int, size: list[float], container: dict, lattice: Lattice) -> ProblemRoom:
    width, depth = (round(length / lattice.step_ft) for length in size)
    allowed = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    allowed[: max(0, lattice.rows - depth + 1), : max(0, lattice.columns - width + 1)] = True
    if container.get("discs"):
        allowed &= _in_a_disc(container["discs"], size, lattice)
    losses = np.zeros(allowed.shape, dtype=np.int64)
    return ProblemRoom(
        f"room {number}",
        required=True,
        walkable=False,
        is_built=True,
        variants=(Variant(0, width, depth, None, (width, depth)),),
        losses=(0,),
        allowed=(allowed,),
        places=(losses,),
        floors=(losses,),
        absent_loss=0,
    )


def _in_a_disc(discs: list[list[float]], size: list[float], lattice: Lattice) -> np.ndarray:
    """Positions at which all four corners lie in one disc."""
    result = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    for row in range(lattice.rows):
        for column in range(lattice.columns):
            corners = [
                (lattice.x_ft(column) + dx, lattice.y_ft(row) + dy) for dx in (0, size[0]) for dy in (0, size[1])
            ]
            result[row, column] = any(
                all(math.hypot(x - cx, y - cy) <= radius + 1e-9 for x, y in corners) for cx, cy, radius in discs
            )
    return result
