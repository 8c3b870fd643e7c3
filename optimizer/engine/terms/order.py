"""The order of room edges: what lies on no line shared with a wall, a structure or another room costs its length. The
edges of a room that is centred on a structure count as shared.

It depends on all rooms at once, so it is counted by itself, and an insertion asks it for the difference that a room
makes at each position.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from optimizer.catalogue import rates
from optimizer.engine.grid.context import Context
from optimizer.engine.pairs.gaps import Steps
from optimizer.engine.terms.term import CENTS
from optimizer.fields import FREE_PART, LINE_TOLERANCE_FT, centre_lines, site_edges

NAME = "order"


class Rect(NamedTuple):
    """A placed room in steps; a circle, by its square, has no edge that could lie on a line."""

    x: int
    y: int
    width: int
    depth: int
    is_round: bool = False

    def along(self, axis: int) -> tuple[int, int, int]:
        """Lines of its two edges across an axis, and their length."""
        if axis == 0:
            return self.x, self.x + self.width, self.depth
        return self.y, self.y + self.depth, self.width


@dataclass(frozen=True, slots=True, eq=False)
class Order:
    """Grid lines of the site along x and y, and for every grid line whether it is one of them (1 or 0); the half
    steps at which structures are centred; cents for each step of edge that lies on no shared line, and for each step by
    which `FREE_PART` times that length passes the length of all edges.
    """

    lines: tuple[frozenset[int], frozenset[int]]
    fixed: tuple[Steps, Steps]
    centres: tuple[frozenset[int], frozenset[int]]
    rate: int
    disorder_rate: int

    @classmethod
    def over(
        cls,
        lines: Sequence[Iterable[int]],
        counts: tuple[int, int],
        *,
        rate: int,
        disorder_rate: int,
        centres: Sequence[Iterable[int]] = ((), ()),
    ) -> "Order":
        """Order over so many grid lines along x and y."""
        within = [
            frozenset(line for line in own if 0 <= line < count) for own, count in zip(lines, counts, strict=True)
        ]
        fixed = [
            np.array([line in own for line in range(count)], dtype=np.int64)
            for own, count in zip(within, counts, strict=True)
        ]
        middles = frozenset(centres[0]), frozenset(centres[1])
        return cls((within[0], within[1]), (fixed[0], fixed[1]), middles, rate, disorder_rate)

    def loss(self, rects: Iterable[Rect]) -> int:
        """Loss of a whole layout [cents]."""
        return Standing.of(self, rects).loss

    def disorder(self, unaligned: int, length: int) -> int:
        """Further loss of what lies on no shared line beyond the part that may."""
        return self.disorder_rate * max(0, FREE_PART * unaligned - length)


@dataclass(frozen=True, slots=True, eq=False)
class Standing:
    """The rooms that stand, as an insertion sees them.

    By axis and line: whether a line is shared already, and the steps of the edge that lies alone on it. Besides, the
    steps of all that lies on no shared line, and of all edges.
    """

    order: Order
    shared: tuple[Steps, Steps]
    alone: tuple[Steps, Steps]
    unaligned: int
    length: int

    @classmethod
    def of(cls, order: Order, rects: Iterable[Rect]) -> "Standing":
        """What stands, once for all variants of a room that is put in."""
        shared, alone = [fixed.copy() for fixed in order.fixed], [np.zeros_like(fixed) for fixed in order.fixed]
        unaligned, length, placed = 0, 0, tuple(rect for rect in rects if not rect.is_round)
        for axis, lines in enumerate(order.lines):
            edges: dict[int, int] = {}  # line -> steps of the edge that lies alone on it, or 0
            for rect in placed:
                low, high, size = rect.along(axis)
                centred = low + high in order.centres[axis]
                edges[low] = 0 if centred or low in edges or low in lines else size
                edges[high] = 0 if centred or high in edges or high in lines else size
                length += 2 * size
            for line, size in edges.items():
                shared[axis][line] = 1
                alone[axis][line] = size
            unaligned += sum(edges.values())
        return cls(order, (shared[0], shared[1]), (alone[0], alone[1]), unaligned, length)

    @property
    def loss(self) -> int:
        """Loss of what stands [cents], which is also the most that an insertion can spare."""
        return self.order.rate * self.unaligned + self.order.disorder(self.unaligned, self.length)

    def loss_added(self, rect: Rect) -> int:
        """What the loss grows by, or shrinks, when a room is put in there [cents]."""
        if rect.is_round:
            return 0
        added = sum(
            sum(self._missing(axis, line, low + high, length) - int(self.alone[axis][line]) for line in (low, high))
            for axis in (0, 1)
            for low, high, length in (rect.along(axis),)
        )
        after = self.order.disorder(self.unaligned + added, self.length + 2 * (rect.width + rect.depth))
        return self.order.rate * added + after - self.order.disorder(self.unaligned, self.length)

    def added(self, axis: int, first: int, count: int, *, size: int, length: int) -> Steps:
        """Steps on no shared line that a room adds, less those that it spares others.

        By where it starts along an axis: at `first` and at `count` places in all. It is `size` steps long there, and
        its two edges across have `length` steps each.
        """
        missing = length * (1 - self.shared[axis])
        low, high = slice(first, first + count), slice(first + size, first + size + count)
        own = missing[low] + missing[high]
        for centre in self.order.centres[axis]:
            at, is_between = divmod(centre - size, 2)
            if not is_between and first <= at < first + count:
                own[at - first] = 0
        return np.asarray(own - self.alone[axis][low] - self.alone[axis][high])

    def _missing(self, axis: int, line: int, middles: int, length: int) -> int:
        """Steps of an edge that lies on no shared line."""
        return 0 if middles in self.order.centres[axis] or self.shared[axis][line] else length

    def disorder_added(self, added: Steps, length: int) -> Steps:
        """What the further loss grows by, when so much edge is added of which so much lies on no shared line."""
        after = FREE_PART * (self.unaligned + added) - (self.length + length)
        was = self.order.disorder(self.unaligned, self.length)
        return np.asarray(self.order.disorder_rate * np.maximum(0, after) - was)


def order_of(context: Context) -> Order:
    """Lines and rates of a yard."""
    weight = context.scenario.brief.weights.order * context.lattice.step_ft
    return Order.over(
        (_lines(context, 0), _lines(context, 1)),
        (context.lattice.columns + 1, context.lattice.rows + 1),
        centres=(_centres(context, 0), _centres(context, 1)),
        rate=round(CENTS * rates().order * weight),
        disorder_rate=round(CENTS * rates().disorder / FREE_PART * weight),
    )


def _lines(context: Context, axis: int) -> frozenset[int]:
    """Grid lines on which an edge of a building or structure lies."""
    origin = (context.lattice.x0_ft, context.lattice.y0_ft)[axis]
    found = {
        context.lattice.line(edge.at_ft, origin_ft=origin, tolerance_ft=LINE_TOLERANCE_FT)
        for edge in site_edges(context.site)
        if edge.axis == axis
    }
    return frozenset(line for line in found if line is not None)


def _centres(context: Context, axis: int) -> Iterator[int]:
    """Half steps at which a structure is centred."""
    origin_ft, half_ft = (context.lattice.x0_ft, context.lattice.y0_ft)[axis], context.lattice.step_ft / 2
    for line_ft in centre_lines(context.site, axis):
        middle = round((line_ft - origin_ft) / half_ft)
        if abs(origin_ft + middle * half_ft - line_ft) <= LINE_TOLERANCE_FT:
            yield middle
