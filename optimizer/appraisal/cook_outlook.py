"""What lies round a kitchen: the room to walk past its stools, and what the cook sees of fire and play."""

from collections.abc import Iterator
from typing import Final

import shapely
from shapely import LineString, Polygon, affinity
from shapely.geometry.base import BaseGeometry

from optimizer.brief import RoomKind
from optimizer.catalogue.sight import eye_height_ft, seen_height_ft
from optimizer.circulation.ground import obstacles_of_site
from optimizer.fields import ground_at_ft
from optimizer.fields.room_screens import layout_screens
from optimizer.fields.seen import Target, seen_share
from optimizer.fields.sight import Eye
from optimizer.fields.sight_ends import Look, screens_for
from optimizer.grading import Grading
from optimizer.layout import FRONT_VECTORS, Placed, PlacedRoom, cook_stands
from optimizer.site import Site

WATCHED: Final[tuple[RoomKind, ...]] = ("fire", "play", "pool")
"""Kinds that a cook keeps an eye on; common practice, no source."""
_FAR_FT: Final = 10.0
_EVEN_FT: Final = 0.01  # what lies flush with the strip is beside it


def past_stools_ft(site: Site, placed: Placed, grading: Grading, kitchen: PlacedRoom) -> float | None:
    """Clear from the bar's edge to what stands before it [ft], at most 10; None where nobody sits there.

    Measured as the NKBA's guideline 8 does, from the edge and not from who sits at it.
    """
    if not kitchen.items("stool"):
        return None
    bar = kitchen.items("ledge")[0]
    out_x, out_y = FRONT_VECTORS[kitchen.front]
    moved = affinity.translate(bar, _FAR_FT * out_x, _FAR_FT * out_y)
    ahead = shapely.union_all([bar, moved]).convex_hull.difference(bar).buffer(-_EVEN_FT)
    others = (other for other in placed if other.name != kitchen.name)
    there = [*_standing(site, grading), *(shape for other in others for shape in _in_room(other))]
    met = (shape.intersection(ahead) for shape in there if shape.intersects(ahead))
    return round(min((float(part.distance(bar)) for part in met), default=_FAR_FT), 2)


def _standing(site: Site, grading: Grading) -> Iterator[BaseGeometry]:
    yield from obstacles_of_site(site)
    yield LineString([*site.boundary, site.boundary[0]])
    yield from (LineString(wall.line) for wall in grading.walls)


def _in_room(room: PlacedRoom) -> Iterator[Polygon]:
    """Furniture of a room on which one can walk, all of any other."""
    if not room.rules.walkable:
        yield room.shape
    else:
        yield from (ground for _, ground in room.furniture)


def watched_shares(site: Site, placed: Placed, kitchen: PlacedRoom) -> tuple[tuple[str, float], ...]:
    """Each fire and play ground with the share of it that somebody sees who stands behind the bar."""
    at = cook_stands(kitchen)
    eye = Eye(at, ground_at_ft(site, at) + eye_height_ft("kitchen"))
    return tuple(
        (seen.name, round(_share(site, placed, eye, kitchen.name, seen), 2)) for seen in placed.of_kind(*WATCHED)
    )


def _share(site: Site, placed: Placed, eye: Eye, looker: str, seen: PlacedRoom) -> float:
    seen_ft = seen_height_ft(seen.kind)
    target = Target(seen.shape, ground_at_ft(site, seen.centre) + seen_ft)
    look = Look(looker, seen.name, must_see=True, share=0.0, eye_ft=eye_height_ft("kitchen"), seen_ft=seen_ft)
    own = layout_screens(site, placed, lookers={}, ends=(looker, seen.name))
    return seen_share(eye, target, (*screens_for(site, look), *own))
