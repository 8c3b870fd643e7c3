"""What all wishes cost together, before any layout, held against the limit."""

from optimizer.catalogue import affordable, existing_of, sized_rooms
from optimizer.concepts.finish_levels import book_of
from optimizer.concepts.words import listed
from optimizer.scenario import Scenario
from ui.view_models.words import words_of


def all_wishes(scenario: Scenario, *, for_designer: bool = False) -> tuple[str, bool]:
    """What all wishes cost at the least, and what has to wait where that passes the limit; and whether it does."""
    words = words_of(scenario, for_designer=for_designer)
    rooms = sized_rooms(scenario.brief)
    found = affordable(scenario.brief, rooms, book_of(scenario), existing_of(scenario.site))
    least = (
        f"All wishes together, each at its smallest, cost at least {words.money(found.least)} before paths and steps"
    )
    if not found.over:
        return f"{least}.", False
    term = words.term("ceiling")
    without = [f"without the {listed(names)} (from {words.money(price)})" for names, price in found.without]
    fits = f"It can fit {', or '.join(without)}." if without else f"What must be passes the {term} alone."
    return f"{least}: {words.money(found.over)} more than your {term}. {fits}", True
