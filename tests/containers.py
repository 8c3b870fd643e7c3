"""Bare containers so small that every layout can be tried, in which most rooms walk to each other."""

from dataclasses import replace
from itertools import combinations, product

import numpy as np

from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Contact
from optimizer.engine.problem import Guide, Problem, ProblemRoom, RoomPair, modelled_value
from optimizer.engine.terms import Order
from optimizer.engine.terms.walking import Walking
from tests.tiny import is_kept, spots

APART = Contact(may_overlap=False, gap=0, share=1)


def container(columns, rows, sizes, rates, contacts=None, **changes):
    """Rooms of these sizes, each in any of its variants, with a rate of walking for each pair; nothing else counts."""
    shape = (rows, columns)
    pairs = tuple(
        RoomPair(a, b, (contacts or {}).get((a, b), APART), (Walking(rate),) if rate else (), ())
        for (a, b), rate in zip(combinations(range(len(sizes)), 2), rates, strict=True)
    )
    problem = Problem(
        context=Context(scenario=None, rooms=(), pose=None, site=None, lattice=Lattice(1.0, 0.0, 0.0, columns, rows)),
        rooms=tuple(room(number, shape, own) for number, own in enumerate(sizes)),
        pairs=pairs,
        pulls=(),
        order=Order.over(((), ()), (columns + 1, rows + 1), rate=0, disorder_rate=0),
        amounts=(),
        rings=(),
        reach=None,
        guide=Guide((), 0),
    )
    return replace(problem, **changes)


def room(number, shape, sizes):
    """A room that must be there, in one of some sizes, with the anchor in its middle."""
    variants = tuple(Variant(0, width, depth, None, (width, depth)) for width, depth in sizes)
    free = np.zeros(shape, dtype=np.int64)
    allowed = []
    for variant in variants:
        mask = np.zeros(shape, dtype=bool)
        mask[: shape[0] - variant.depth + 1, : shape[1] - variant.width + 1] = True
        allowed.append(mask)
    return ProblemRoom(
        f"room {number}", required=True, walkable=False, is_built=False, variants=variants,
        losses=(0,) * len(variants), allowed=tuple(allowed), places=(free,) * len(variants),
        floors=(free,) * len(variants), absent_loss=0,
    )  # fmt: skip


WIDE_GAP = {(0, 1): Contact(may_overlap=False, gap=3, share=9)}
"""Two rooms that keep 3 steps, while others may stand between them without a gap."""
GAPS = dict.fromkeys([(0, 1), (0, 2), (1, 2)], Contact(may_overlap=False, gap=1, share=9))
TOUCH = {(0, 2): Contact(may_overlap=False, gap=1, share=1, must_touch=True, touch_share=1)}
MAY_TOUCH = dict.fromkeys([(0, 1), (0, 2), (1, 2)], Contact(may_overlap=False, gap=1, share=3))
OVER = {(0, 1): Contact(gap=2, share=1)}

DENSE = {
    "a row": container(9, 1, [[(3, 1)], [(1, 1)], [(2, 1)]], (3, 5, 1)),
    "a row of four": container(7, 1, [[(2, 1)], [(1, 1)], [(1, 1)], [(2, 1)]], (1, 4, 9, 2, 0, 5)),
    "a column": container(1, 8, [[(1, 3)], [(1, 1)], [(1, 2)]], (2, 6, 1)),
    "a row with one wide gap": container(9, 1, [[(1, 1)], [(1, 1)], [(1, 1)]], (9, 1, 1), WIDE_GAP),
    "a row with gaps": container(9, 1, [[(2, 1)], [(1, 1)], [(1, 1)]], (5, 1, 3), GAPS),
    "a row that may touch": container(7, 3, [[(1, 3)], [(2, 3)], [(1, 3)]], (5, 1, 3), MAY_TOUCH),
    "a row, one over the other": container(5, 1, [[(3, 1)], [(1, 1)], [(1, 1)]], (4, 2, 1), OVER),
    "a row of two sizes": container(8, 2, [[(2, 2), (3, 2)], [(1, 2)], [(3, 2), (2, 2)]], (5, 2, 3)),
    "a box": container(4, 3, [[(2, 1), (1, 2)], [(2, 2)], [(1, 1)]], (2, 7, 4)),
    "a full box": container(3, 2, [[(1, 1)], [(2, 1)], [(1, 1)], [(1, 1)]], (3, 1, 4, 1, 5, 9)),
    "touching": container(5, 3, [[(1, 2)], [(2, 1)], [(1, 1)]], (9, 0, 2), TOUCH),
    "one over the other": container(5, 2, [[(4, 1)], [(1, 1)], [(1, 1)]], (4, 2, 1), OVER),
}


def least_by_hand(problem):
    """Least value of all layouts that keep everything; None where there is none."""
    every = product(*(spots(data) for data in problem.rooms))
    return min((modelled_value(problem, state) for state in every if is_kept(problem, state)), default=None)
