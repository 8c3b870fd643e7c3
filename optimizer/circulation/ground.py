"""Ground on which the centre line of a clear way may run."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Final, TypeAlias

from shapely import MultiPolygon, Point, Polygon, union_all

from optimizer.fields import SITES, site_shapes
from optimizer.fields.site_walls import barriers
from optimizer.layout import TOLERANCE_FT, Placed, walked_round
from optimizer.site import Site

Ground: TypeAlias = Polygon | MultiPolygon
CLEAR_WIDTH_FT: Final = 3.0
"""Width of a walkway: 36 in, NKBA Kitchen Planning Guideline 7."""
_LEAST_TRUNK_RADIUS_FT: Final = 1.0  # common practice, no source: nobody walks closer to a trunk


def walkable_ground(
    site: Site, placed: Placed, clear_width_ft: float = CLEAR_WIDTH_FT, furniture: Sequence[Polygon] = ()
) -> Ground:
    """Where the centre of a way of this clear width may run, round so much of the furniture.

    Structures are walked through. The inset is smaller by the touching tolerance, so that a gap of just the clear
    width still joins what lies on either side of it.
    """
    free = site_shapes(site).boundary.difference(union_all([*obstacles_of_site(site), *_standing(placed), *furniture]))
    return free.buffer(TOLERANCE_FT - clear_width_ft / 2, join_style="mitre")


@lru_cache(maxsize=SITES)
def obstacles_of_site(site: Site) -> tuple[Polygon, ...]:
    """What takes ground, and walls that nobody walks through."""
    return (*taken_ground(site), *barriers(site))


@lru_cache(maxsize=SITES)
def taken_ground(site: Site) -> tuple[Polygon, ...]:
    """Buildings, kept-out ground that allows no path, and trunks."""
    shapes = site_shapes(site)
    kept_out = zip(site.keep_outs, shapes.keep_outs, strict=True)
    radii = ((tree.at, max(_LEAST_TRUNK_RADIUS_FT, tree.trunk_diameter_ft / 2)) for tree in site.trees)
    return (
        *shapes.buildings,
        *(ground for area, ground in kept_out if "path" not in area.allow),
        *(Point(at).buffer(radius_ft, quad_segs=2) for at, radius_ft in radii),
    )


def _standing(placed: Placed) -> Iterator[Polygon]:
    """What is walked round: rooms that nobody walks on, water within its deck, and whatever the brief does not know."""
    decked = {room.placement: room for room in placed if room.rules.has_deck}
    walked_on = {room.placement for room in placed if room.rules.walkable}
    for place in placed.layout.placements:
        if place in decked:
            yield from decked[place].kept_from_paths
        elif place not in walked_on:
            yield walked_round(place)
