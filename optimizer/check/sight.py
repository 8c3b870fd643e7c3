"""Which share of one end of a relation of sight is seen from the other, with the rooms as they stand."""

from collections.abc import Mapping, Sequence

from optimizer.brief import Relation, RoomKind
from optimizer.catalogue import SizedRoom
from optimizer.fields import ground_at_ft
from optimizer.fields.room_screens import layout_screens
from optimizer.fields.seen import Target, seen_share
from optimizer.fields.sight import Eye
from optimizer.fields.sight_ends import Look, fixed_eye, look_of, screens_for, seen_thing
from optimizer.layout import Placed
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

Kinds = Mapping[str, RoomKind]


def sight_share(scenario: Scenario, placed: Placed, relation: Relation) -> float | None:
    """Share, 0 to 1, of what is looked at that is seen; None where an end is left out or has no eye.

    What hides: buildings, neighbours, fences, evergreen crowns, counters, bars and seat walls of other rooms, and
    bought panels. Open structures and trees that lose their leaves do not.
    """
    site = scenario.site
    look = look_for(scenario, placed.wished, relation)
    eye, target = _eye(site, placed, look), _target(site, placed, look)
    if eye is None or target is None:
        return None
    lookers = lookers_of(scenario, placed)
    own = layout_screens(site, placed, lookers=lookers, ends=(look.looker, look.seen))
    return seen_share(eye, target, (*screens_for(site, look), *own))


def look_for(scenario: Scenario, rooms: Sequence[SizedRoom], relation: Relation) -> Look:
    """Look that a relation of sight asks for."""
    return look_of(scenario.site, relation, {room.name: room.rules.kind for room in rooms})


def _eye(site: Site, placed: Placed, look: Look) -> Eye | None:
    if look.eye_ft is None:
        return fixed_eye(site, look.looker)
    room = placed.of(look.looker)
    return None if room is None else Eye(room.centre, ground_at_ft(site, room.centre) + look.eye_ft)


def _target(site: Site, placed: Placed, look: Look) -> Target | None:
    if look.seen_ft is None:
        return seen_thing(site, look.seen)
    room = placed.of(look.seen)
    if room is None:
        return None
    return Target(room.shape, ground_at_ft(site, room.centre) + look.seen_ft)


def lookers_of(scenario: Scenario, placed: Placed) -> dict[str, list[Point]]:
    """For each room where those are who must not see it."""
    result: dict[str, list[Point]] = {}
    for relation in scenario.brief.relations:
        if relation.kind == "out_of_view":
            look = look_for(scenario, placed.wished, relation)
            eye = _eye(scenario.site, placed, look)
            if eye is not None:
                result.setdefault(look.seen, []).append(eye.at)
    return result
