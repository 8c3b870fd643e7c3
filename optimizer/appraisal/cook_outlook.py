"""What lies round a kitchen: the room to walk past its stools, and what the cook sees of fire and play."""

from collections.abc import Iterator, Sequence
from typing import Final

import shapely
from shapely import LineString, Polygon, affinity
from shapely.geometry.base import BaseGeometry

from optimizer.brief import RoomKind
from optimizer.catalogue import SizedRoom
from optimizer.catalogue.sight import eye_height_ft, seen_height_ft
from optimizer.circulation import cook_stands, rectangle
from optimizer.circulation.furniture import item_on_plan
from optimizer.circulation.ground import obstacles_of_site
from optimizer.circulation.screens import layout_screens
from optimizer.fields import ground_at_ft
from optimizer.fields.sight import Eye, sample_points, visible_share
from optimizer.fields.sight_ends import Look, screens_for
from optimizer.grading import Grading
from optimizer.layout import Layout, Placement
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.site import Site

WATCHED: Final[tuple[RoomKind, ...]] = ("fire", "play")
"""Kinds that a cook keeps an eye on; common practice, no source."""
_FAR_FT: Final = 10.0
_EVEN_FT: Final = 0.01  # what lies flush with the strip is beside it
Placed = tuple[SizedRoom, Placement]


def past_stools_ft(site: Site, placed: Sequence[Placed], grading: Grading, kitchen: Placed) -> float | None:
    """Clear from the bar's edge to what stands before it [ft], at most 10; None where nobody sits there.

    Measured as the NKBA's guideline 8 does, from the edge and not from who sits at it.
    """
    room, place = kitchen
    choice = room.choice(place.choice)
    if choice is None or not any(item.role == "stool" for item in choice.furniture):
        return None
    bar = next(item_on_plan(place, choice, item) for item in choice.furniture if item.role == "ledge")
    out_x, out_y = FRONT_VECTORS[place.front]
    moved = affinity.translate(bar, _FAR_FT * out_x, _FAR_FT * out_y)
    ahead = shapely.union_all([bar, moved]).convex_hull.difference(bar).buffer(-_EVEN_FT)
    others = (other for other in placed if other[1].room != place.room)
    there = [*_standing(site, grading), *(shape for other in others for shape in _in_room(*other))]
    met = (shape.intersection(ahead) for shape in there if shape.intersects(ahead))
    return round(min((float(part.distance(bar)) for part in met), default=_FAR_FT), 2)


def _standing(site: Site, grading: Grading) -> Iterator[BaseGeometry]:
    yield from obstacles_of_site(site)
    yield LineString([*site.boundary, site.boundary[0]])
    yield from (LineString(wall.ends) for wall in grading.walls)


def _in_room(room: SizedRoom, place: Placement) -> Iterator[Polygon]:
    """Furniture of a room on which one can walk, all of any other."""
    choice = room.choice(place.choice)
    if not room.rules.walkable:
        yield rectangle(place)
    elif choice is not None:
        yield from (item_on_plan(place, choice, item) for item in choice.furniture)


def watched_shares(
    site: Site, rooms: Sequence[SizedRoom], layout: Layout, placed: Sequence[Placed], kitchen: Placed
) -> tuple[tuple[str, float], ...]:
    """Each fire and play ground with the share of it that somebody sees who stands behind the bar."""
    room, place = kitchen
    at = cook_stands(place, room.choice(place.choice))
    eye = Eye(at, ground_at_ft(site, at) + eye_height_ft("kitchen"))
    return tuple(
        (other.name, round(_share(site, rooms, layout, eye, (room.name, other, there)), 2))
        for other, there in placed
        if other.rules.kind in WATCHED
    )


def _share(
    site: Site, rooms: Sequence[SizedRoom], layout: Layout, eye: Eye, between: tuple[str, SizedRoom, Placement]
) -> float:
    looker, seen, there = between
    seen_ft = seen_height_ft(seen.rules.kind)
    points = sample_points(rectangle(there), ground_at_ft(site, there.centre) + seen_ft)
    look = Look(looker, seen.name, must_see=True, share=0.0, eye_ft=eye_height_ft("kitchen"), seen_ft=seen_ft)
    own = layout_screens(site, rooms, layout, lookers={}, ends=(looker, seen.name))
    return visible_share((eye,), points, (*screens_for(site, look), *own))
