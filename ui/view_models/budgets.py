"""What each budget buys, as the few steps that an owner chooses between."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Final

from ui.view_models.words import Words

MOST_STEPS: Final = 4
LEAST_RISE: Final = Decimal("1.1")
"""Steps shown are so much apart at least; the finer ones stay in the file."""
_ONLY_SIZE: Final = "one size"
"""Label that the catalogue gives to a size beside which there is no other: it says nothing to an owner."""


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


def budget_steps(document: Mapping[str, Any], words: Words) -> tuple[BudgetStep, ...]:
    """The steps of budgets.json that are shown, by rising ceiling."""
    points = _shown(document["points"])
    return tuple(
        _step(point, before, after, words)
        for before, point, after in zip([None, *points], points, [*points[1:], None], strict=False)
    )


def _shown(points: Sequence[Mapping[str, Any]]) -> list[Mapping[str, Any]]:
    """Of the points the last, and before it such as lie clearly apart: those without which most would be lost."""
    kept = list(points)
    while close := [at for at in range(len(kept) - 1) if not _are_apart(kept[at], kept[at + 1])]:
        of_pairs = {at for pair in close for at in (pair, pair + 1) if at < len(kept) - 1}
        del kept[min(sorted(of_pairs), key=lambda at: _lost(kept, at))]
    while len(kept) > MOST_STEPS:
        del kept[min(range(len(kept) - 1), key=lambda at: _lost(kept, at))]
    return kept


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
    size = "" if thing["choice"] == _ONLY_SIZE else f" ({thing['choice']})"
    return f"{thing['name']}{size}"
