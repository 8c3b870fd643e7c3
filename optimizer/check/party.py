"""Rules about people: the everyday guests at one table, and a seat or ground to stand on for the party."""

from collections.abc import Iterator

from optimizer.catalogue import asked_by, held, holds, party_is_held, table_is_held
from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding


def everyday_table(case: CheckCase) -> Iterator[Finding]:
    """No table that stands has a chair for each everyday guest.

    Hard where a room that is required has a table that is large enough. Where none has, the rule asks nothing, and a
    concept without such a table carries a caution with the number that is missing.
    """
    guests = case.scenario.brief.guests
    missing = guests.everyday - held(holds(placed.room, choice) for placed, choice in case.placed.chosen).table
    if table_is_held(case.placed.wished, guests) and missing > 0:
        words = f"the largest table lacks {missing} of {guests.everyday} chairs"
        yield Finding("everyday_table", (), missing, "people", words)


def party_seats(case: CheckCase) -> Iterator[Finding]:
    """Too few seats for 70 % of the party, or too little clear paving for the others to stand on, 8 sq ft each.

    Seats are counted from the drawing, in rooms of phase 1. Hard where the wish list holds the party with the largest
    choice of every room. Where it does not, no set of choices could: the rule asks nothing, and every concept carries
    a caution with the number that is missing.
    """
    guests = case.scenario.brief.guests
    asked = asked_by(guests)
    there = held(holds(placed.room, choice) for placed, choice in case.placed.chosen)
    if not party_is_held(case.placed.wished, guests) or asked.is_held(there.seats, there.standing_sqft):
        return
    if there.seats < asked.seats:
        words = f"{there.seats} seats, {asked.seats} are asked for a party of {asked.people}"
        yield Finding("party_seats", (), asked.seats - there.seats, "people", words)
    else:
        need = asked.standing_sqft(there.seats)
        words = f"{there.standing_sqft:.0f} sq ft to stand on, {need:.0f} are asked for those without a seat"
        yield Finding("party_seats", (), need - there.standing_sqft, "sq ft", words)
