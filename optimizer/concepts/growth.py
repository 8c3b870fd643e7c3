"""Rooms grow to lines once a concept is settled: what keeps every rule and betters the exact score is taken."""

import threading
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from optimizer.appraisal import bare_doors, bare_doors_loss, order_loss, order_measures
from optimizer.catalogue import rates, room_price
from optimizer.circulation import way_polygon
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.moves import Move, Moves
from optimizer.layout import Layout, canonical_pose
from optimizer.planting import planting_of

MOST_MOVES: Final = 8
"""So many moves are tried at most: each costs the judge about as long as a new layout."""
_PASSES: Final = 2  # a line that came of a move is one that others may grow to
_EVEN: Final = 0.01  # money
_Rectangles = tuple[tuple[float, float, float, float], ...]


@dataclass(frozen=True, slots=True)
class Grown:
    """A layout whose rooms have grown, and what the judge says of it; as it was where no growth is worth it."""

    layout: Layout
    verdict: Verdict


def grow(case: Case, settled: Grown, *, stop: threading.Event) -> Grown:
    """Grow the rooms of a layout that holds. The same for a yard and its turned or mirrored copy; ends when stopped."""
    placed, legs = case.placed(settled.layout), settled.verdict.measured.legs
    site, relations = case.scenario.site, case.scenario.brief.relations
    planting = planting_of(site, relations, placed, way_polygon(site, placed, legs))
    growth = _Growth(case, Moves.of(case, planting.beds), stop)
    return growth.taken(growth.wanted(settled.layout), settled)


@dataclass(frozen=True)
class _Growth:
    case: Case
    moves: Moves
    stop: threading.Event

    def wanted(self, layout: Layout) -> tuple[Move, ...]:
        """Moves that by the losses of order and the price of ground are worth it, each after those before it."""
        now, value, taken = layout, self._estimate(layout), list[Move]()
        for move in (move for _ in range(_PASSES) for move in self._best_first(now, value)):
            after = self.moves.made(now, move)
            if after is None or self.stop.is_set():
                continue
            less = self._estimate(after)
            if less < value - _EVEN and self.case.fits(after):
                now, value = after, less
                taken.append(move)
        return tuple(taken[:MOST_MOVES])

    def taken(self, moves: Sequence[Move], before: Grown) -> Grown:
        """The layout after all of the moves if the judge finds it better; else after what is taken of each half."""
        after = self._after(moves, before.layout)
        if after == before.layout or self.stop.is_set():
            return before
        verdict = self.case.judged(after)
        if verdict.score < before.verdict.score - _EVEN:  # what is refused has no score below any
            return Grown(after, verdict)
        half = len(moves) // 2
        return self.taken(moves[half:], self.taken(moves[:half], before)) if half else before

    def _after(self, moves: Sequence[Move], layout: Layout) -> Layout:
        for move in moves:
            layout = self.moves.made(layout, move) or layout
        return layout

    def _best_first(self, layout: Layout, value: float) -> Iterator[Move]:
        """Moves that look worth it, the best first; of equal ones the first in the canonical pose."""
        pose, found = canonical_pose(self.case.scenario.site), list[tuple[float, _Rectangles, Move]]()
        for move in self.moves.all(layout):
            after = self.moves.made(layout, move)
            if after is not None and (loss := self._estimate(after)) < value - _EVEN:
                posed = tuple((p.x_ft, p.y_ft, p.width_ft, p.depth_ft) for p in pose.layout(after).placements)
                found.append((round(loss, 2), posed, move))
        return (move for *_, move in sorted(found))

    def _estimate(self, layout: Layout) -> float:
        """Losses that growth changes most, in money: order, doors without a terrace, and the price of the rooms."""
        scenario, placed = self.case.scenario, self.case.placed(layout)
        site, brief, weights = scenario.site, scenario.brief, scenario.brief.weights
        order = order_loss(order_measures(site, placed)) + bare_doors_loss(site, brief, bare_doors(site, brief, placed))
        price = sum(room_price(choice, room.room, self.case.book) for room, choice in placed.chosen)
        return weights.order * order + weights.cost * rates().cost * float(price * brief.budget.factor)
