"""What a party asks of a yard, what each choice of a room holds of it, and whether the wish list could hold all."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from math import ceil
from typing import Any, NamedTuple

import shapely
from shapely import Polygon, affinity, box

from optimizer.brief import Guests, RoomKind
from optimizer.catalogue.chair_space import kept_from_paths
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import Item, SizedChoice, SizedRoom

_ROUNDING = 1e-6
_QUARTER_STEPS = 32  # straight pieces in a quarter of a circle
_RING = ("fire pit", "fire seat")
"""Furniture between which nobody stands: the ground inside the ring belongs to those who sit in it."""


class Holds(NamedTuple):
    """What a choice holds: people on chairs at its one table, people seated in all, ground to stand on [sq ft]."""

    table: int
    seats: int
    standing_sqft: float


@dataclass(frozen=True, slots=True)
class Asked:
    """What a party asks for: people in all, and how many of them sit."""

    people: int
    seats: int

    def standing_sqft(self, seats: int) -> float:
        """Ground for those who find no seat, where so many are seated [sq ft]."""
        return max(0, self.people - seats) * standing_each_sqft()

    def is_held(self, seats: int, standing_sqft: float) -> bool:
        """Whether so many seats and so much ground are enough."""
        return seats >= self.seats and standing_sqft >= self.standing_sqft(seats) - _ROUNDING


def asked_by(guests: Guests) -> Asked:
    """What the party of the brief asks for: seats for 70 % of it, rounded up."""
    return Asked(guests.party, ceil(_figures()["seated_share"] * guests.party - _ROUNDING))


def standing_each_sqft() -> float:
    """Ground of one person who stands in conversation [sq ft]."""
    return float(_figures()["standing_sqft"])


def holds(room: SizedRoom, choice: SizedChoice) -> Holds:
    """What a choice of a room holds of a party; nothing where the room is built in a later phase."""
    return _holds(room.rules.kind, choice) if room.phase_of(choice) == 1 else Holds(0, 0, 0.0)


def held(found: Iterable[Holds]) -> Holds:
    """What several rooms hold together; at one table only as many as the largest seats."""
    entries = tuple(found)
    return Holds(
        max((one.table for one in entries), default=0),
        sum(one.seats for one in entries),
        sum(one.standing_sqft for one in entries),
    )


def table_is_held(rooms: Sequence[SizedRoom], guests: Guests) -> bool:
    """Whether a room that is required has a table with a chair for each everyday guest.

    A room that is left to choice can be done without, and its table with it.
    """
    return bool(_hosts(rooms, guests))


def party_is_held(rooms: Sequence[SizedRoom], guests: Guests) -> bool:
    """Whether the wish list holds the party, and the everyday guests at one table if it has such a table."""
    return asked_by(guests).is_held(*most_held(rooms, guests)[1:])


def most_held(rooms: Sequence[SizedRoom], guests: Guests) -> Holds:
    """What the wish list holds with the choice of every room that seats most, standing room breaking ties.

    Where a table is large enough for the everyday guests, one room has such a choice: the one that leaves most seats.
    """
    hosts: Sequence[SizedRoom | None] = _hosts(rooms, guests) or [None]
    together = (held(_fullest(room, guests.everyday if room is host else 0) for room in rooms) for host in hosts)
    return max(together, key=lambda there: there[1:])


def _hosts(rooms: Sequence[SizedRoom], guests: Guests) -> list[SizedRoom]:
    """Required rooms with a choice at whose table the everyday guests sit."""
    able = (room for room in rooms if any(holds(room, choice).table >= guests.everyday for choice in room.choices))
    return [room for room in able if room.required]


def _fullest(room: SizedRoom, at_table: int) -> Holds:
    """What the room holds with the choice that seats most, of those with so many chairs at a table."""
    found = (holds(room, choice) for choice in room.choices)
    return max((one for one in found if one.table >= at_table), key=lambda one: one[1:])


@cache
def _holds(kind: RoomKind, choice: SizedChoice) -> Holds:
    chairs = sum(item.seats for item in choice.furniture if item.role == "chair")
    standing = _standing_sqft(choice) if kind in _figures()["stand_on"] else 0.0
    return Holds(chairs if kind == "gathering" else 0, sum(item.seats for item in choice.furniture), standing)


def _standing_sqft(choice: SizedChoice) -> float:
    """Paving of a choice clear of furniture, of chairs that are pushed back and of the ring round a fire [sq ft]."""
    taken = [_ground(item) for item in kept_from_paths(choice)]
    ring = [_ground(item) for item in choice.furniture if item.role in _RING]
    around = shapely.union_all(ring).convex_hull
    clear = _floor(choice).difference(shapely.union_all([*taken, around]))
    half = _figures()["narrowest_standing_ft"] / 2
    return float(clear.buffer(-half + _ROUNDING, join_style="mitre").buffer(half - _ROUNDING, join_style="mitre").area)


def _floor(choice: SizedChoice) -> Polygon:
    whole = box(0, 0, choice.width_ft, choice.depth_ft)
    return whole.centroid.buffer(choice.width_ft / 2, quad_segs=_QUARTER_STEPS) if choice.shape == "circle" else whole


def _ground(item: Item) -> Polygon:
    square = box(item.x_ft, item.y_ft, item.x_ft + item.width_ft, item.y_ft + item.depth_ft)
    return affinity.rotate(square, item.turn_deg)


def _figures() -> Any:
    return data("party.yaml")["asked"]
