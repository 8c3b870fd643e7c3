"""What all wishes cost together, before any layout, held against the limit."""

from typing import Final

from optimizer.catalogue import affordable, existing_of, sized_rooms
from optimizer.concepts.finish_levels import book_of
from optimizer.concepts.words import listed
from optimizer.scenario import Scenario
from ui.view_models.words import words_of

_TOLD: Final = 3
"""Of so many things that could wait it is told, those that save most first."""


def all_wishes(scenario: Scenario, *, for_designer: bool = False) -> tuple[str, bool]:
    """What all wishes cost at the least, and what has to wait where that passes the limit; and whether it does."""
    words = words_of(scenario, for_designer=for_designer)
    rooms = sized_rooms(scenario.brief)
    found = affordable(scenario.brief, rooms, book_of(scenario), existing_of(scenario.site))
    least = (
        f"All wishes together, each at its smallest, cost at least {words.money(found.least)}, and paths and steps "
        "come on top"
    )
    if not found.over:
        return f"{least}.", False
    term = words.term("ceiling")
    waits = [f"without the {listed(names)} from {words.money(price)}" for names, price in found.without[:_TOLD]]
    left = f"Something has to wait: {'; '.join(waits)}." if waits else f"What must be passes the {term} alone."
    return f"{least}: {words.money(found.over)} over your {term} before those. {left}", True
