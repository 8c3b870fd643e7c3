"""What a proof lacks where most rooms walk to each other. In yards few do, and there it would only slow the proof down.

Floors in one line: what the sides of a pair ask of its distances, said without conditions, so that the linear
relaxation knows it. Rows have a module of their own. Triangles of distances gained nothing beside these.
"""

from typing import Final

from optimizer.engine.model.floors import least_beside
from optimizer.engine.model.pair_model import PairModel
from optimizer.engine.model.rows import AXES, add_rows
from optimizer.engine.model.scope import Scope
from optimizer.engine.problem import Problem
from optimizer.engine.terms.walking import Walking

LEAST_ROOMS: Final = 3
LEAST_SHARE: Final = 0.4
"""Trips are dense where so many of all pairs, or more, walk to each other."""


def is_dense(problem: Problem, scope: Scope) -> bool:
    """Whether the rooms of a scope are all there, on any side of each other, and many pairs walk to each other."""
    there = {room for room, variants in enumerate(scope.variants) if variants is not None}
    pairs = [n for n, pair in enumerate(problem.pairs) if {pair.first, pair.second} <= there]
    if any(scope.optional) or len(there) < LEAST_ROOMS or any(scope.sides[n] is not None for n in pairs):
        return False
    if not all(scope.variants[room] for room in there):  # a room without a size: nothing fits, nothing is to tighten
        return False
    walking = sum(any(isinstance(stamp, Walking) for stamp in problem.pairs[n].stamps) for n in pairs)
    return walking >= LEAST_SHARE * len(pairs)


def tighten(views: list[PairModel]) -> None:
    """Add it to the model of a dense scope, once everything else is said of its pairs."""
    for view in views:
        _add_floors(view)
    add_rows(views)


def _add_floors(view: PairModel) -> None:
    """On one axis at most one way of standing side by side is true: together they are one floor."""
    for axis, distance in enumerate(view.apart):
        floor = sum(
            (least_beside(view, side) + 2 * view.gap_of(number)) * way
            for side in AXES[axis]
            for number, way in enumerate(view.by_side.get(side, []))
        )
        view.always(distance >= floor)
