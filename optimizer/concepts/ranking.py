"""Order concepts: those that lead, then by their exact score."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from optimizer.concepts.leading import Standing, leading
from optimizer.concepts.option import DiffersBy, Option
from optimizer.concepts.reasons import Teller
from optimizer.layout import MOVED_SHARE, Layout, arrangement_of, difference

LEAST_DIFFERENCE: Final = 0.12
_LOOKED_AT = 100
"""So many of the best, and of the best with every room, are compared with each other."""


def ranked(options: Sequence[Option], *, count: int, comparison: "Comparison") -> tuple[Option, ...]:
    """At most `count` concepts: those that lead, then best first; what hardly differs from a better one is dropped.

    Half of the places go to concepts with every wished room, if there are so many, the best of every idea before
    others; no other program takes more than half; and concepts that differ clearly come in before closer ones. Layouts
    are compared as they were before rooms grew. They have no place and no reason yet: `in_words` gives them.
    """
    best_first = sorted(options, key=lambda option: option.score)
    choice = _Choice(comparison)
    choice.add_leading(best_first, places=count)
    whole = [option for option in best_first if not option.left_out][:_LOOKED_AT]
    best_first, half = best_first[:_LOOKED_AT], (count + 1) // 2
    choice.add_ideas(whole, places=half)
    for candidates, places, each in ((whole, half, half), (best_first, count, half), (best_first, count, count)):
        for least in (2 * LEAST_DIFFERENCE, LEAST_DIFFERENCE):
            choice.add(candidates, places=places, each=each, least=least)
    return choice.in_order()


def standing_of(option: Option) -> Standing:
    """What decides where an option stands."""
    return Standing(option.score, len(option.left_out), option.idea_name)


def is_same(one: Layout, other: Layout, *, diagonal_ft: float) -> bool:
    """Whether two layouts count as one: the same arrangement, no room moved by over 15 % of the yard's diagonal."""
    if arrangement_of(one) != arrangement_of(other):
        return False
    moved = (
        max(abs(a.centre[0] - b.centre[0]), abs(a.centre[1] - b.centre[1]))
        for a, b in zip(one.placements, other.placements, strict=True)
    )
    return max(moved, default=0.0) <= MOVED_SHARE * diagonal_ft


@dataclass
class Comparison:
    """Differences of layouts, each worked out once; a copy of another differs by less than nothing.

    Layouts are compared in the pose that `posed` brings them to, so that a turned yard has the same set.
    """

    diagonal_ft: float
    posed: Callable[[Layout], Layout] = lambda layout: layout
    _known: dict[tuple[str, str], float] = field(default_factory=dict)
    _posed: dict[Layout, tuple[str, Layout]] = field(default_factory=dict)

    def difference(self, one: Option, other: Option) -> float:
        """Difference of two options, -1 where they count as one."""
        (a, here), (b, there) = self._in_pose(one), self._in_pose(other)
        key = (a, b) if a <= b else (b, a)
        if key not in self._known:
            copies = is_same(here, there, diagonal_ft=self.diagonal_ft)
            self._known[key] = -1.0 if copies else difference(here, there, diagonal_ft=self.diagonal_ft)
        return self._known[key]

    def _in_pose(self, option: Option) -> tuple[str, Layout]:
        if option.layout not in self._posed:
            self._posed[option.layout] = (f"{len(self._posed):06d}", self.posed(option.layout.base))
        return self._posed[option.layout]


@dataclass
class _Choice:
    """Options that are taken so far."""

    comparison: Comparison
    taken: list[Option] = field(default_factory=list)

    def add_leading(self, candidates: Sequence[Option], *, places: int) -> None:
        """Take those that lead; of two that hardly differ the later is passed over, and another may lead for it."""
        left = list(candidates)
        while True:
            lead = [left[n] for n in leading([standing_of(option) for option in left])]
            close = next((o for n, o in enumerate(lead) if not self._differs(o, lead[:n], LEAST_DIFFERENCE)), None)
            if close is None:
                break
            left.remove(close)
        self.taken += lead[:places]

    def add_ideas(self, candidates: Sequence[Option], *, places: int) -> None:
        """Take the best of each idea that no option taken follows."""
        for option in candidates:
            names = {standing_of(other).idea for other in self.taken} | {None}
            if len(self.taken) < places and standing_of(option).idea not in names:
                self.add([option], places=places, each=places, least=LEAST_DIFFERENCE)

    def add(self, candidates: Sequence[Option], *, places: int, each: int, least: float) -> None:
        """Take candidates that are new by at least this difference, `each` of a program and `places` in all."""
        for option in candidates:
            alike = sum(option.left_out_rooms == other.left_out_rooms for other in self.taken)
            if len(self.taken) < places and alike < each and self._is_new(option, least):
                self.taken.append(option)

    def in_order(self) -> tuple[Option, ...]:
        """The options taken: those that lead, then by score."""
        by_score = sorted(self.taken, key=lambda option: option.score)
        lead = leading([standing_of(option) for option in by_score])
        order = [*lead, *(n for n in range(len(by_score)) if n not in lead)]
        return tuple(by_score[n] for n in order)

    def _is_new(self, option: Option, least: float) -> bool:
        return option not in self.taken and self._differs(option, self.taken, least)

    def _differs(self, option: Option, others: Sequence[Option], least: float) -> bool:
        return all(self.comparison.difference(option, other) >= least for other in others)


def in_words(shown: Sequence[Option], comparison: Comparison, say: Teller) -> tuple[Option, ...]:
    """Options in their order, each with its place, its reason and what tells it from the nearest before it."""
    return tuple(_in_words(option, shown[:rank], comparison, say) for rank, option in enumerate(shown))


def _in_words(option: Option, better: Sequence[Option], comparison: Comparison, say: Teller) -> Option:
    nearest = min(better, key=lambda other: comparison.difference(option, other), default=None)
    differs = None
    if nearest is not None:
        value = round(max(0.0, comparison.difference(option, nearest)), 3)
        differs = DiffersBy(value, say.difference(option.layout, nearest.layout))
    rank = len(better) + 1
    reason = say.reason(option, better[0] if better else None)
    return replace(option, id=f"concept-{rank:02d}", rank=rank, differs_by=differs, reason=reason)
