"""Of two layouts that mirror each other one is enough: where a whole problem is its own mirror image along an axis, the
room with most walking stands in the first half.

Yards are not: doors, fronts and walls tell left from right. Bare containers are, and there it halves the work.
"""

import numpy as np

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.model.linear import Model
from optimizer.engine.model.scope import Scope
from optimizer.engine.model.variables import Rooms
from optimizer.engine.problem import Problem
from optimizer.engine.terms.walking import Walking


def break_mirrors(model: Model, problem: Problem, scope: Scope, rooms: Rooms) -> None:
    """Keep one room in the first half, along each axis that the problem is symmetric along.

    That room depends on the problem and on which rooms are there alone, so that models of parts of the same places,
    which together hold all of them, hold one of each two mirror images.
    """
    there = [room for room, variables in enumerate(rooms) if variables is not None]
    if not there or any(side is not None for side in scope.sides):
        return
    kept = max(there, key=lambda room: (_walking(problem, room), -room))
    variables = rooms[kept]
    assert variables is not None
    for axis, middle in enumerate((2 * variables.x + variables.width, 2 * variables.y + variables.depth)):
        total = _mirror(problem, there, axis)
        if total is not None:
            model.add(middle <= total)


def _walking(problem: Problem, room: int) -> int:
    pairs = [pair for pair in problem.pairs if room in (pair.first, pair.second)]
    return sum(stamp.rate for pair in pairs for stamp in pair.stamps if isinstance(stamp, Walking))


def _mirror(problem: Problem, there: list[int], axis: int) -> int | None:
    """Twice the line that the problem is mirrored in, in steps; None where it is not symmetric."""
    rooms = [problem.rooms[room] for room in there]
    stamps = [stamp for pair in problem.pairs for stamp in pair.stamps if stamp.in_model]
    on_lines = problem.order.lines[axis] or problem.order.centres[axis]
    if problem.pulls or problem.rings or on_lines or not all(isinstance(s, Walking) for s in stamps):
        return None
    found: set[int | None] = set()
    for room in rooms:
        for variant, allowed, floors in zip(room.variants, room.allowed, room.floors, strict=True):
            size = (variant.width, variant.depth)
            is_even = variant.front is None and variant.anchor == size
            if allowed.any():
                found.add(_own_mirror(allowed, floors, axis, size[axis]) if is_even else None)
    return next(iter(found)) if len(found) == 1 else None


def _own_mirror(allowed: Cells, floors: np.ndarray, axis: int, size: int) -> int | None:
    """The same for the places of one variant, with what they cost."""
    open_, costs = (allowed.T, floors.T) if axis == 1 else (allowed, floors)
    columns = np.flatnonzero(open_.any(axis=0))
    low, high = int(columns[0]), int(columns[-1])
    own = np.s_[:, low : high + 1]
    parts = (open_[own], np.where(open_, costs, 0)[own])
    return low + high + size if all(np.array_equal(part, part[:, ::-1]) for part in parts) else None
