"""Rooms in a row, where no two can lie one behind the other: every third room lies between two others or beside them,
and those between add their lengths to the distance of the two.

Source: Amaral, A new lower bound for the single row facility layout problem, Discrete Applied Mathematics 157 (2009).
"""

from itertools import combinations
from typing import Final

from optimizer.engine.model.floors import least_beside
from optimizer.engine.model.linear import Literal
from optimizer.engine.model.pair_model import PairModel
from optimizer.engine.problem.arrangement import ABOVE, BELOW, LEFT, RIGHT

AXES: Final = ((LEFT, RIGHT), (BELOW, ABOVE))
"""Sides along x and along y, before and behind."""


def add_rows(views: list[PairModel]) -> None:
    """Say it along each axis that all rooms lie one after another along."""
    rooms = sorted({room for view in views for room in (view.pair.first, view.pair.second)})
    is_complete = 2 * len(views) == len(rooms) * (len(rooms) - 1)
    for axis in (0, 1):
        if len(rooms) >= 3 and is_complete and not any(_may_stack(view, 1 - axis) for view in views):
            _Row(views, rooms, axis).add()


def _may_stack(view: PairModel, axis: int) -> bool:
    """Whether one of two rooms may lie wholly before the other along an axis, or may overlap it."""
    (end_a, start_a), (end_b, start_b) = (_reach(view, end, axis) for end in (0, 1))
    return view.contact.may_overlap or end_a <= start_b or end_b <= start_a


def _reach(view: PairModel, end: int, axis: int) -> tuple[int, int]:
    """Least end and greatest start of a room along an axis."""
    variants = view.problem.rooms[(view.pair.first, view.pair.second)[end]].variants
    zones = view.room(end).zones
    ends = [(zone.left, zone.low)[axis] + variants[v].size[axis] for _, v, zone in zones]
    return min(ends, default=0), max(((zone.right, zone.top)[axis] for _, _, zone in zones), default=0)


class _Row:
    """Of each three rooms of a row one lies between the others."""

    def __init__(self, views: list[PairModel], rooms: list[int], axis: int) -> None:
        self._axis, self._rooms = axis, rooms
        self._views = {(view.pair.first, view.pair.second): view for view in views}
        self._model = views[0]
        self._gap = min(_sure_gap(view, axis) for view in views)
        self._between = {
            (middle, *pair): self._model.boolean() for middle in rooms for pair in self._views if middle not in pair
        }

    def add(self) -> None:
        """Say who lies between whom, and what that adds to their distance."""
        for trio in combinations(self._rooms, 3):
            self._add_trio(trio)
        for middle in self._rooms:
            others = [room for room in self._rooms if room != middle]
            for a, b, c in combinations(others, 3):
                self._add_parity([self._between[middle, *pair] for pair in ((a, b), (b, c), (a, c))])
        for pair, view in self._views.items():
            if view.apart:
                inner = [(self._size(room), self._between[room, *pair]) for room in self._rooms if room not in pair]
                beside = min(least_beside(view, side) for side in AXES[self._axis]) + 2 * self._gap
                floor = sum(2 * (size + self._gap) * literal for size, literal in inner)
                self._model.always(view.apart[self._axis] >= beside + floor)

    def _add_trio(self, trio: tuple[int, int, int]) -> None:
        literals = []
        for middle in trio:
            a, b = (room for room in trio if room != middle)
            literal = self._between[middle, a, b]
            literals.append(literal)
            for one, other in ((a, b), (b, a)):
                for first in self._before(one, middle):
                    for second in self._before(middle, other):
                        self._model.any_of([first.negated(), second.negated(), literal])
        self._model.always(sum(literals) == 1)

    def _add_parity(self, literals: list[Literal]) -> None:
        """A room parts three others into two groups: it lies between none of their pairs, or between two."""
        self._model.always(sum(literals) <= 2)
        for literal in literals:
            self._model.always(2 * literal <= sum(literals))

    def _before(self, one: int, other: int) -> list[Literal]:
        """Literals of which one is true where one room lies before another."""
        before, behind = AXES[self._axis]
        return self._views[min(one, other), max(one, other)].by_side[before if one < other else behind]

    def _size(self, room: int) -> int:
        """Steps that a room takes at least."""
        view = next(view for pair, view in self._views.items() if room in pair)
        end = 0 if room == view.pair.first else 1
        return min(variant.size[self._axis] for variant, _ in view.variants(end))


def _sure_gap(view: PairModel, axis: int) -> int:
    """Steps that two rooms in a row keep at least: none where they may touch."""
    longest = max(variant.size[1 - axis] for end in (0, 1) for variant, _ in view.variants(end))
    return 0 if view.contact.may_touch and view.contact.shared <= longest else view.contact.gap
