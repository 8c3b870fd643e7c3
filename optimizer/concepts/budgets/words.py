"""What one more step of money buys, in a sentence."""

from collections.abc import Collection, Sequence
from decimal import Decimal

from optimizer.catalogue import SizedRoom
from optimizer.concepts.reasons import resized_words
from optimizer.concepts.words import listed
from optimizer.layout import Layout, Placement


def step_words(
    now: Layout, before: Layout | None, more: Decimal, *, rooms: Collection[SizedRoom], currency: str
) -> str:
    """What is bought, against the step before, whose ceiling is so much lower."""
    labels = {room.name: [choice.label for choice in room.sizes] for room in rooms}
    if before is None:
        all_of_it = listed([_named(place, labels[place.room]) for place in now.placements])
        return f"The least that was found to work: {all_of_it}."
    added = [_named(place, labels[place.room]) for place in now.placements if before.of(place.room) is None]
    both = [(old, new) for new in now.placements if (old := before.of(new.room)) is not None]
    changed = [resized_words(old, new) for old, new in both if old.choice != new.choice]
    without = [f"without the {old.room}" for old in before.placements if now.of(old.room) is None]
    bought = [f"the {listed(added)}"] if added else []
    return f"For about {more:,.0f} {currency} more: {'; '.join(bought + changed + without)}."


def _named(place: Placement, labels: Sequence[str]) -> str:
    """A room with its choice where it has several, else with what is bought besides."""
    return place.room + place.choice.removeprefix(labels[0]) if len(labels) == 1 else f"{place.room} ({place.choice})"
