"""Ground that each room may stand on, while the others are away."""

import numpy as np

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import context_of
from optimizer.engine.problem.build import allowed_positions, sizes_of
from optimizer.scenario import Scenario


def buildable_sqft(scenario: Scenario, rooms: tuple[SizedRoom, ...]) -> tuple[tuple[str, float], ...]:
    """Room and the area that any of its choices can cover in some place [sq ft]; 0 where it fits nowhere."""
    context = context_of(scenario, rooms)
    result = []
    for room in rooms:
        cells = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
        variants = sizes_of(context, room)
        for variant, allowed in zip(variants, allowed_positions(context, room, variants), strict=True):
            for row, column in np.argwhere(allowed):
                cells[row : row + variant.depth, column : column + variant.width] = True
        result.append((room.name, float(cells.sum()) * context.lattice.step_ft**2))
    return tuple(result)
