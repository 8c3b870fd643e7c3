"""What the placed rooms must give together: a table for the everyday guests, seats and ground for the party."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from optimizer.catalogue import Holds, asked_by, holds, party_is_held, standing_each_sqft, table_is_held
from optimizer.instance.context import Context

if TYPE_CHECKING:
    from optimizer.instance.instance import InstanceRoom


@dataclass(frozen=True, slots=True)
class Need:
    """`gives[room][variant]` is what a variant gives, rounded up; the placed rooms give `least` or more together."""

    gives: tuple[tuple[int, ...], ...]
    least: int

    def most(self, room: int) -> int:
        """Most that a room can give."""
        return max(self.gives[room], default=0)


def needs_of(context: Context, rooms: Sequence["InstanceRoom"], *, table: bool, party: bool) -> tuple[Need, ...]:
    """Needs of the limits that are on and that the wish list can meet."""
    return tuple(_needs(context, rooms, table=table, party=party))


def _needs(context: Context, rooms: Sequence["InstanceRoom"], *, table: bool, party: bool) -> Iterator[Need]:
    guests = context.scenario.brief.guests
    if table and table_is_held(context.rooms, guests):
        yield _need(context, rooms, lambda choice: int(choice.table >= guests.everyday), 1)
    if party and party_is_held(context.rooms, guests):
        asked, each = asked_by(guests), standing_each_sqft()
        yield _need(context, rooms, lambda choice: choice.seats, asked.seats)
        ground = each * asked.people
        yield _need(context, rooms, lambda choice: ceil(each * choice.seats + choice.standing_sqft), int(ground))


def _need(context: Context, rooms: Sequence["InstanceRoom"], of: Callable[[Holds], int], least: int) -> Need:
    gives = tuple(
        tuple(of(holds(room, room.choices[variant.choice])) for variant in built.variants)
        for room, built in zip(context.rooms, rooms, strict=True)
    )
    return Need(gives, least)
