"""Least that phase 1 can cost: what is required, and as many choices as the guests need."""

from collections.abc import Iterator
from decimal import Decimal
from math import ceil
from typing import NamedTuple

from optimizer.catalogue import (
    Asked,
    SizedRoom,
    asked_by,
    existing_of,
    fixed_price,
    holds,
    party_is_held,
    room_price,
    standing_each_sqft,
    table_is_held,
)
from optimizer.concepts.case import Case


class _Given(NamedTuple):
    """What rooms give the guests, counted no further than it is asked: a table, seats, seats and ground in sq ft."""

    table: int
    seats: int
    ground: int

    def plus(self, other: "_Given", asked: "_Given") -> "_Given":
        return _Given(*(min(a + b, most) for a, b, most in zip(self, other, asked, strict=True)))


def floor_price(case: Case) -> Decimal:
    """Least price of the required rooms, with others where the guests' rules ask for them, every stated step included.

    Ways and runs are not in it. Rooms are added one by one, with the least price for each amount that is given.
    """
    brief, asked = case.scenario.brief, _asked(case)
    least = {_Given(0, 0, 0): fixed_price(brief, case.book, existing_of(case.scenario.site))}
    for room in case.rooms:
        options = list(_options(case, room))
        after: dict[_Given, Decimal] = {}
        for given, price in least.items():
            for more, dearer in options:
                together = given.plus(more, asked)
                after[together] = min(after.get(together, price + dearer), price + dearer)
        least = after
    return brief.budget.least(least[asked])


def _asked(case: Case) -> _Given:
    guests = case.scenario.brief.guests
    table = int(table_is_held(case.rooms, guests))
    if not party_is_held(case.rooms, guests):
        return _Given(table, 0, 0)
    asked: Asked = asked_by(guests)
    return _Given(table, asked.seats, int(standing_each_sqft() * asked.people))


def _options(case: Case, room: SizedRoom) -> Iterator[tuple[_Given, Decimal]]:
    """What each choice of a room gives and costs; nothing for nothing where the room may be left out."""
    if not room.required:
        yield _Given(0, 0, 0), Decimal(0)
    for choice in room.choices:
        there = holds(room, choice)
        ground = ceil(standing_each_sqft() * there.seats + there.standing_sqft)
        table = int(there.table >= case.scenario.brief.guests.everyday)
        yield _Given(table, there.seats, ground), room_price(choice, room, case.book, existing_of(case.scenario.site))
