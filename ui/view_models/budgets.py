"""What each budget buys, as the few steps that an owner chooses between."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import islice
from typing import Any, Final

from optimizer.concepts.words import choice_words
from ui.view_models.words import Words

MOST_STEPS: Final = 4
LEAST_RISE: Final = Decimal("1.1")
"""Steps shown are so much apart at least; the finer ones stay in the file."""


@dataclass(frozen=True, slots=True)
class BudgetStep:
    """One step: its ceiling and cost in words, what it buys, what it adds for how much more, and its concept."""

    concept: str
    amount: Decimal
    ceiling: str
    cost: str
    rooms: tuple[str, ...]
    adds: str
    next: str
    level: str | None = None
    """Finish level that it is built in; None where the yard offers none."""
    is_own: bool = False
    """Whether it is the step that the yard's own ceiling buys."""

    @property
    def label(self) -> str:
        """Its ceiling, and that it is the family's own."""
        return f"{self.ceiling} (your limit buys this)" if self.is_own else self.ceiling


def budget_steps(document: Mapping[str, Any], words: Words, ceiling: Decimal | None = None) -> tuple[BudgetStep, ...]:
    """The steps of budgets.json that are shown, by rising ceiling; `ceiling` is the yard's own."""
    found = document["points"]
    points = _shown(found, _bought(found, ceiling))
    own = _bought(points, ceiling)
    return tuple(
        replace(_step(point, before, after, words), is_own=point is own)
        for before, point, after in zip([None, *points], points, [*points[1:], None], strict=False)
    )


def limit_words(steps: Sequence[BudgetStep], ceiling: Decimal | None, words: Words) -> str:
    """How the yard's own ceiling lies to the steps; nothing without one."""
    if ceiling is None or not steps:
        return ""
    limit = f"Your {words.term('ceiling')} is {words.money(ceiling)}"
    further = next((step for step in steps if step.amount > ceiling), None)
    if not any(step.is_own for step in steps):
        return f"{limit}: {words.money(steps[0].amount - ceiling)} less than the least that was found to work."
    if further is None:
        return f"{limit}. It buys all that was found."
    return f"{limit}; the next step shown needs {words.money(further.amount - ceiling)} more than that."


def _bought(points: Sequence[Mapping[str, Any]], ceiling: Decimal | None) -> Mapping[str, Any] | None:
    """The dearest point within a ceiling; None without either."""
    within = [point for point in points if ceiling is not None and _ceiling(point) <= ceiling]
    return within[-1] if within else None


def _shown(points: Sequence[Mapping[str, Any]], own: Mapping[str, Any] | None) -> list[Mapping[str, Any]]:
    """Of the points the last, the family's own and the next one, where these are clearly less, and beside them such as
    lie clearly apart: those without which most would be lost.
    """
    kept = list(points)
    stays = [*kept[-1:], *(point for point in _own_and_next(kept, own) if _are_apart(point, kept[-1]))]

    def may_go(at: int) -> bool:
        return not any(kept[at] is point for point in stays)

    while close := [at for at in range(len(kept) - 1) if not _are_apart(kept[at], kept[at + 1])]:
        of_pairs = sorted({at for pair in close for at in (pair, pair + 1) if may_go(at)})
        del kept[min(of_pairs, key=lambda at: _lost(kept, at))]
    while len(kept) > MOST_STEPS:
        del kept[min(filter(may_go, range(len(kept))), key=lambda at: _lost(kept, at))]
    return kept


def _own_and_next(points: Sequence[Mapping[str, Any]], own: Mapping[str, Any] | None) -> Iterator[Mapping[str, Any]]:
    """The point that the yard's own ceiling buys, and the first beyond it that is clearly dearer."""
    if own is not None:
        yield own
        dearer = (point for point in points if _ceiling(point) > _ceiling(own) and _are_apart(point, own))
        yield from islice(dearer, 1)


def _lost(points: Sequence[Mapping[str, Any]], at: int) -> float:
    """Worth that a point has beyond the one before, times the money to the next; the first has all of its worth."""
    before = points[at - 1]["worth"] if at else 0.0
    return float(points[at]["worth"] - before) * float(_ceiling(points[at + 1]) - _ceiling(points[at]))


def _ceiling(point: Mapping[str, Any]) -> Decimal:
    return Decimal(point["ceiling"])


def _are_apart(one: Mapping[str, Any], other: Mapping[str, Any]) -> bool:
    low, high = sorted((_ceiling(one), _ceiling(other)))
    return high >= LEAST_RISE * low


def _step(
    point: Mapping[str, Any], before: Mapping[str, Any] | None, after: Mapping[str, Any] | None, words: Words
) -> BudgetStep:
    adds = "" if before is None else f"{_more(before, point, words)} more than the step before: {_new(before, point)}"
    following = "" if after is None else f"For {_more(point, after, words)} more: {_new(point, after)}"
    return BudgetStep(
        concept=point["concept"],
        amount=_ceiling(point),
        ceiling=words.money(_ceiling(point)),
        cost=words.money(round(Decimal(point["cost"]), -2)),
        rooms=tuple(_thing(thing) for thing in point["rooms"]),
        adds=adds,
        next=following,
        level=point.get("level"),
    )


def _more(one: Mapping[str, Any], other: Mapping[str, Any], words: Words) -> str:
    return words.money(_ceiling(other) - _ceiling(one))


def _new(one: Mapping[str, Any], other: Mapping[str, Any]) -> str:
    """What the dearer of two points has that the other has not, what it does without, and in what materials."""
    had = {thing["name"]: thing["choice"] for thing in one["rooms"]}
    has = {thing["name"] for thing in other["rooms"]}
    new = [_thing(thing) for thing in other["rooms"] if had.get(thing["name"]) != thing["choice"]]
    changes = [*new, *(f"without the {name}" for name in had if name not in has)]
    if one.get("level") != other.get("level"):
        level = f"in {other['level']} materials instead of {one['level']}"
        return f"{', '.join(changes)}, {level}" if changes else f"the same rooms {level}"
    return ", ".join(changes)


def _thing(thing: Mapping[str, str]) -> str:
    size = choice_words(thing["choice"])
    return f"{thing['name']} ({size})" if size else thing["name"]
