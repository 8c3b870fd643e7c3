"""What the page asks about a yard: the limit, the guests, what each room is, and what counts how much."""

from dataclasses import dataclass, fields, replace
from decimal import Decimal
from typing import Any, Final, Literal

from optimizer.brief import LATER_PHASE, Brief, RoomWish, Weights
from optimizer.scenario import Scenario
from ui.edits.text import LAST, with_value, without_value
from ui.view_models import capital

Standing = Literal["must", "like", "later"]
STANDINGS: Final[tuple[Standing, ...]] = ("must", "like", "later")
STANDING_NAMES: Final[dict[Standing, str]] = {"must": "must", "like": "would like", "later": "later"}
WEIGHT_NAMES: Final = {
    "walking": "short ways on foot",
    "cost": "money",
    "sun": "sun and shade as wished",
    "worth": "what you would miss",
    "sight": "views",
    "order": "lines that meet",
    "smoke": "smoke",
    "paving": "little paving of paths",
}
AMOUNTS: Final = {0.0: "not at all", 0.5: "half", 1.0: "as usual", 2.0: "double"}
"""How much something counts, in the steps that are offered."""
_FINISH: Final = ("brief", "finish")


@dataclass(frozen=True, slots=True)
class Wanted:
    """Answers of one yard; `standings` is for each room in the order of the file, `weights` by name."""

    ceiling: Decimal | None
    everyday: int
    party: int
    standings: tuple[Standing, ...]
    weights: tuple[tuple[str, float], ...]
    levels: tuple[str, ...] = ()
    """Names of the finish levels that may be tried."""
    level: str | None = None
    """Which of them concepts are made in."""


def standing_of(room: RoomWish) -> Standing:
    """What a room is: a concept without it is none, it is liked, or it comes later."""
    if room.phase > 1:
        return "later"
    return "must" if room.required else "like"


def amount_words(weight: float) -> str:
    """Say how much something counts; also what lies between the steps that are offered."""
    return AMOUNTS.get(weight, f"{weight:g} times")


def wanted_of(brief: Brief) -> Wanted:
    """Answers that a file gives already."""
    return Wanted(
        ceiling=brief.budget.ceiling,
        everyday=brief.guests.everyday,
        party=brief.guests.party,
        standings=tuple(standing_of(room) for room in brief.rooms),
        weights=tuple((field.name, getattr(brief.weights, field.name)) for field in fields(Weights)),
        levels=tuple(level.name for level in brief.finish_levels),
        level=brief.finish_level,
    )


def changed(scenario: Scenario, wanted: Wanted) -> tuple[str, str]:
    """Text with these answers in the place of those that differ, and in words what differs; empty for nothing."""
    was, text, said = wanted_of(scenario.brief), scenario.text, []
    if wanted.ceiling != was.ceiling:
        text = with_value(text, ("budget", "ceiling"), None if wanted.ceiling is None else _number(wanted.ceiling))
        said.append("no all-in limit" if wanted.ceiling is None else f"all-in limit {wanted.ceiling:,.0f}")
    for key in ("everyday", "party"):
        count = getattr(wanted, key)
        if count != getattr(was, key):
            text = with_value(text, ("brief", "guests", key), count)
            said.append(f"{count} guests {'on a usual day' if key == 'everyday' else 'at a party'}")
    for index, (room, standing) in enumerate(zip(scenario.brief.rooms, wanted.standings, strict=True)):
        if standing != standing_of(room):
            text = _with_standing(text, index, room, standing)
            said.append(f"{room.name}: {STANDING_NAMES[standing]}")
    for name, weight in wanted.weights:
        if weight != dict(was.weights)[name]:
            text = with_value(text, ("brief", "weights", name), weight)
            said.append(f"{WEIGHT_NAMES[name]}: {amount_words(weight)}")
    text, of_levels = _with_levels(text, was, wanted)
    return text, capital("; ".join([*said, *of_levels]))


def _with_levels(text: str, was: Wanted, wanted: Wanted) -> tuple[str, list[str]]:
    """Text with these finish levels; those that stay keep their place and what the file says of them."""
    said: list[str] = []
    if wanted.levels != was.levels:
        for index in reversed(range(len(was.levels))):
            if was.levels[index] not in wanted.levels:
                text = without_value(text, (*_FINISH, "levels", index))
        for name in wanted.levels:
            if name not in was.levels:
                text = with_value(text, (*_FINISH, "levels", LAST), name)
        said.append(f"materials to compare: {', '.join(wanted.levels) or 'none'}")
    if wanted.level != was.level:
        path = (*_FINISH, "level")
        text = without_value(text, path) if wanted.level is None else with_value(text, path, wanted.level)
        said.append(f"concepts in {wanted.level or 'the usual'} materials")
    return text, said


def _with_standing(text: str, index: int, room: RoomWish, standing: Standing) -> str:
    """Text in which a room is required, liked or of a later phase; keys that say so already stay unsaid."""
    is_later = standing == "later"
    phase = LATER_PHASE if is_later else 1
    now = replace(room, required=standing == "must", phase=phase, may_wait=room.may_wait and not is_later)
    for key in ("required", "phase", "may_wait"):
        value: Any = getattr(now, key)
        if value != getattr(room, key):
            text = with_value(text, ("brief", "rooms", index, key), value)
    return text


def _number(amount: Decimal) -> int | float:
    return int(amount) if amount == amount.to_integral_value() else float(amount)
