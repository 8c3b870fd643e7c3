"""Floors of the walking between two rooms: side by side they cannot be nearer. Without them the bound is of no use, by
measurement.
"""

from typing import TYPE_CHECKING

from optimizer.engine.grid.variants import Variant
from optimizer.engine.model.linear import Linear, Literal
from optimizer.engine.problem.arrangement import BELOW, LEFT, RIGHT

if TYPE_CHECKING:
    from optimizer.engine.model.pair_model import PairModel


def add_floors(view: "PairModel", distances: tuple[Linear, Linear]) -> None:
    """Floors of the walking between two rooms that stand side by side, anchor to anchor, in half steps."""
    if not view.by_side:
        return
    a, b = view.rooms
    x, y = ([(v.anchor[axis], literal) for v, literal in view.variants(0)] for axis in (0, 1))
    u, w = ([(v.anchor[axis], literal) for v, literal in view.variants(1)] for axis in (0, 1))
    own, other = (_sum(x), _sum(y)), (_sum(u), _sum(w))
    for side, ways in view.by_side.items():
        axis = 0 if side in (LEFT, RIGHT) else 1
        size_a, size_b = ((a.width, b.width), (a.depth, b.depth))[axis]
        before = side in (LEFT, BELOW)
        need = 2 * size_a - own[axis] + other[axis] if before else 2 * size_b - other[axis] + own[axis]
        for number, way in enumerate(ways):
            view.hold(distances[axis] >= need + 2 * view.gap_of(number), way)
    _add_least(view, distances)


def _add_least(view: "PairModel", distances: tuple[Linear, Linear]) -> None:
    """Whatever the side, the anchors are so far apart: for each variant of one room the least over the other's."""
    if view.contact.may_overlap:
        return
    for end in (0, 1):
        others = [other for other, _ in view.variants(1 - end)]
        least = [
            (min((least_apart(v, w) if end == 0 else least_apart(w, v) for w in others), default=0), literal)
            for v, literal in view.variants(end)
        ]
        most = max((steps for steps, _ in least), default=0)
        other = view.rooms[1 - end].there
        away = 0 if other is None else most * (1 - other)
        if most > 0:
            view.always(sum(distances) >= _sum(least) - away)


def least_apart(first: Variant, second: Variant) -> int:
    """Half steps that the anchors of two rooms which do not overlap are apart at least, over all sides."""
    needs = []
    for axis in (0, 1):
        size = [(v.width, v.depth)[axis] for v in (first, second)]
        at = first.anchor[axis], second.anchor[axis]
        needs += [2 * size[0] - at[0] + at[1], 2 * size[1] - at[1] + at[0]]
    return max(0, min(needs))


def least_beside(view: "PairModel", side: int) -> int:
    """Half steps that the anchors are apart at least along an axis with the first room on that side of the second."""
    axis, front = side // 2, 0 if side in (LEFT, BELOW) else 1
    beyond = min(2 * variant.size[axis] - variant.anchor[axis] for variant, _ in view.variants(front))
    return beyond + min(variant.anchor[axis] for variant, _ in view.variants(1 - front))


def _sum(weighed: list[tuple[int, Literal]]) -> Linear:
    return sum(weight * literal for weight, literal in weighed)
