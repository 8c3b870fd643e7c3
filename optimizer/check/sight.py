"""Which share of one end of a relation of sight is seen from the other, with the rooms as they stand."""

from collections.abc import Mapping, Sequence

from optimizer.brief import Relation, RoomKind
from optimizer.catalogue import SizedRoom
from optimizer.circulation import rectangle
from optimizer.circulation.screens import layout_screens
from optimizer.fields import ground_at_ft
from optimizer.fields.sight import Eye, Numbers, sample_points, visible_share
from optimizer.fields.sight_ends import Look, fixed_eye, look_of, screens_for, seen_points
from optimizer.layout import Layout
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

Kinds = Mapping[str, RoomKind]


def sight_share(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout, relation: Relation) -> float | None:
    """Share, 0 to 1, of what is looked at that is seen; None where an end is left out or has no eye.

    What hides: buildings, neighbours, fences, evergreen crowns, counters, bars and seat walls of other rooms, and
    bought panels. Open structures and trees that lose their leaves do not.
    """
    site = scenario.site
    look = look_for(scenario, rooms, relation)
    eye, points = _eye(site, layout, look), _points(site, layout, look)
    if eye is None or points is None:
        return None
    lookers = lookers_of(scenario, rooms, layout)
    own = layout_screens(site, rooms, layout, lookers=lookers, ends=(look.looker, look.seen))
    return visible_share((eye,), points, (*screens_for(site, look), *own))


def look_for(scenario: Scenario, rooms: Sequence[SizedRoom], relation: Relation) -> Look:
    """Look that a relation of sight asks for."""
    return look_of(scenario.site, relation, {room.name: room.rules.kind for room in rooms})


def _eye(site: Site, layout: Layout, look: Look) -> Eye | None:
    if look.eye_ft is None:
        return fixed_eye(site, look.looker)
    placed = layout.of(look.looker)
    return None if placed is None else Eye(placed.centre, ground_at_ft(site, placed.centre) + look.eye_ft)


def _points(site: Site, layout: Layout, look: Look) -> Numbers | None:
    if look.seen_ft is None:
        return seen_points(site, look.seen)
    placed = layout.of(look.seen)
    if placed is None:
        return None
    return sample_points(rectangle(placed), ground_at_ft(site, placed.centre) + look.seen_ft)


def lookers_of(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout) -> dict[str, list[Point]]:
    """For each room where those are who must not see it."""
    result: dict[str, list[Point]] = {}
    for relation in scenario.brief.relations:
        if relation.kind == "out_of_view":
            look = look_for(scenario, rooms, relation)
            eye = _eye(scenario.site, layout, look)
            if eye is not None:
                result.setdefault(look.seen, []).append(eye.at)
    return result
