"""Seats that are drawn hold 70 % of the party, and clear paving the others."""

from collections.abc import Iterator
from math import ceil

from optimizer.catalogue import PriceBook, asked_by, party_is_held, standing_each_sqft
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.rules.given import given
from optimizer.engine.rules.part import Part, Variants


def _seats_and_ground(context: Context, variants: Variants, _book: PriceBook) -> Iterator[Amount]:
    """What a choice gives is rounded up, so this is looser than the check."""
    guests = context.scenario.brief.guests
    if party_is_held(context.rooms, guests):
        asked, each = asked_by(guests), standing_each_sqft()
        yield Amount("party_seats", given(context, variants, lambda choice: choice.seats), least=asked.seats)
        ground = given(context, variants, lambda choice: ceil(each * choice.seats + choice.standing_sqft))
        yield Amount("party_seats", ground, least=int(each * asked.people))


PART = Part(amounts=_seats_and_ground)
