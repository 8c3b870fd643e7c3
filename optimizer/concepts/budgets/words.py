"""What one more step of money buys, in a sentence."""

from collections.abc import Collection, Sequence
from decimal import Decimal

from optimizer.catalogue import SizedRoom
from optimizer.concepts.budgets.points import Bought
from optimizer.concepts.reasons import resized_words
from optimizer.concepts.words import listed
from optimizer.layout import Placement


def step_words(
    now: Bought, before: Bought | None, more: Decimal, *, rooms: Collection[SizedRoom], currency: str
) -> str:
    """What is bought, against the step before, whose ceiling is so much lower."""
    labels = {room.name: [choice.label for choice in room.sizes] for room in rooms}
    if before is None:
        all_of_it = listed([_named(place, labels[place.room]) for place in now.layout.placements])
        return f"The least that was found to work{_in(now.level)}: {all_of_it}."
    stays = "the same plan" if now.layout == before.layout else "the same rooms"
    changes = "; ".join(_room_changes(now, before, labels)) or stays
    return f"For about {more:,.0f} {currency} more: {changes}{_level_change(now, before)}."


def _room_changes(now: Bought, before: Bought, labels: dict[str, list[str]]) -> list[str]:
    """Rooms that come, change their size and go."""
    old, new = before.layout, now.layout
    added = [_named(place, labels[place.room]) for place in new.placements if old.of(place.room) is None]
    both = [(was, place) for place in new.placements if (was := old.of(place.room)) is not None]
    changed = [resized_words(was, place) for was, place in both if was.choice != place.choice]
    without = [f"without the {was.room}" for was in old.placements if new.of(was.room) is None]
    bought = [f"the {listed(added)}"] if added else []
    return [*bought, *changed, *without]


def _level_change(now: Bought, before: Bought) -> str:
    return "" if now.level == before.level else f", in {now.level} materials instead of {before.level}"


def _in(level: str | None) -> str:
    return f", in {level} materials" if level else ""


def _named(place: Placement, labels: Sequence[str]) -> str:
    """A room with its choice where it has several, else with what is bought besides."""
    return place.room + place.choice.removeprefix(labels[0]) if len(labels) == 1 else f"{place.room} ({place.choice})"
