"""The door that an outdoor kitchen is served from, and how far it may be on foot."""

from math import dist
from typing import Final

from optimizer.brief import Relation
from optimizer.catalogue import SizedRoom
from optimizer.layout import Placement
from optimizer.scenario import Scenario
from optimizer.site import Door

KITCHEN_WALK_FT: Final = 25.0
"""Longest way from the kitchen door to the outdoor kitchen; common practice, no source."""


def kitchen_door(scenario: Scenario, room: SizedRoom, placement: Placement | None = None) -> Door | None:
    """Door at the other end of a trip or relation of the kitchen, else the one nearest to where it stands.

    None where neither names a door and no place is given, or the site has no door.
    """
    trips = [(trip.start, trip.end) for trip in scenario.brief.trips]
    pairs = trips + [relation.between for relation in scenario.brief.relations]
    others = [b if a == room.name else a for a, b in pairs if room.name in (a, b)]
    doors = scenario.site.doors
    joined = next((door for name in others for door in doors if door.name == name), None)
    if joined is not None or placement is None:
        return joined
    return min(doors, key=lambda door: dist(door.at, placement.centre), default=None)


def kitchen_walk_limit_ft(scenario: Scenario, room: SizedRoom) -> float | None:
    """Longest way on foot from its door to an outdoor kitchen [ft].

    None for any other kind, and where the brief says how near a door the kitchen must be.
    """
    doors = {door.name for door in scenario.site.doors}
    told = any(_speaks(relation, room, doors) for relation in scenario.brief.relations)
    return None if told or room.rules.kind != "kitchen" else KITCHEN_WALK_FT


def _speaks(relation: Relation, room: SizedRoom, doors: set[str]) -> bool:
    joins_door = room.name in relation.between and not doors.isdisjoint(relation.between)
    return joins_door and relation.kind == "near" and relation.is_hard
