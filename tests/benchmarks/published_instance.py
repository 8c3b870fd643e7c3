"""A published instance in the engine's own terms: masks, pairs and pulls, as any yard has."""

import math
from itertools import combinations

import numpy as np
from optimizer.instance import Instance, InstanceRoom, Pair, Pull, Variant
from optimizer.instance.context import Context
from optimizer.instance.lattice import Lattice

SCALE = 100
"""Whole losses for each unit of flow and half step."""
NEVER_TOUCHING = 10**6


def instance_of(data: dict, container: dict) -> Instance:
    """The engine's instance of a file's rooms in a container."""
    lattice = _lattice(container, data["grid"])
    rooms = tuple(_room(number, size, container, lattice) for number, size in enumerate(data["rooms"]))
    gap = round(data["gap"] / data["grid"])
    pairs = tuple(
        Pair(a, b, may_overlap=False, gap=gap, share=NEVER_TOUCHING) for a, b in combinations(range(len(rooms)), 2)
    )
    pulls = tuple(Pull(a, b, None, round(SCALE * flow)) for a, b, flow in data["flows"])
    context = Context(scenario=None, rooms=(), pose=None, site=None, lattice=lattice)  # type: ignore[arg-type]
    return Instance(context, rooms, pairs, pulls, (), (), 0, None, 0, None)


def _lattice(container: dict, step: float) -> Lattice:
    low = container.get("rectangle_from", [0.0, 0.0])
    high = container.get("rectangle_to") or container["rectangle"]
    columns, rows = (round((end - start) / step) for start, end in zip(low, high, strict=True))
    return Lattice(step, low[0], low[1], columns, rows)


def _room(number: int, size: list[float], container: dict, lattice: Lattice) -> InstanceRoom:
    width, depth = (round(length / lattice.step_ft) for length in size)
    allowed = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    allowed[: max(0, lattice.rows - depth + 1), : max(0, lattice.columns - width + 1)] = True
    if container.get("discs"):
        allowed &= _in_a_disc(container["discs"], size, lattice)
    losses = np.zeros(allowed.shape, dtype=np.int64)
    variant = Variant(0, width, depth, None, (width, depth))
    return InstanceRoom(
        f"room {number}",
        required=True,
        walkable=False,
        variants=(variant,),
        allowed=(allowed,),
        losses=(losses,),
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
