"""Where beds are wanted: strips along, between, before and round what stands."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import combinations
from math import cos, pi, sin
from typing import Final

import shapely
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation
from optimizer.catalogue import root_rings
from optimizer.fields import SITES, site_shapes
from optimizer.fields.house_strips import house_strips
from optimizer.fields.site_walls import passages
from optimizer.layout import Placed, Placement
from optimizer.site import Entrance, Point, Site

HOUSE_BED_FT: Final = 3.5
"""Depth of a bed along the house, 3 to 4 ft; common practice, no source."""
BETWEEN_FT: Final = (3.0, 8.0)
"""Gaps between rooms that a bed fills; common practice, no source."""
SCREEN_FT: Final = 6.0
"""Depth of a bed that screens, 5 to 8 ft; common practice, no source."""
WATER_BED_FT: Final = 3.0
"""Depth of the bed round ground that is kept for water; common practice, no source."""
ENTRANCE_FT: Final = SCREEN_FT + 4.0
"""Depth of the ground in front of an entrance that no bed closes, a mower's width past a bed that screens; common
practice, no source.
"""
RING_FT: Final = (2.0, 5.0)
"""Least and most radius of the mulch round a trunk, between them the inner root ring; common practice, no source."""
_RING_SIDES: Final = 16


@lru_cache(maxsize=SITES)
def round_trees(site: Site) -> BaseGeometry:
    """Rings of mulch round the trunks of kept trees."""
    least, most = RING_FT
    return shapely.union_all([_ring(at, min(most, max(least, radius_ft))) for at, radius_ft in _inner_rings(site)])


@lru_cache(maxsize=SITES)
def inner_roots(site: Site) -> BaseGeometry:
    """Ground among the roots of kept trees in which nobody digs."""
    return shapely.union_all([_ring(at, radius_ft) for at, radius_ft in _inner_rings(site)])


def at_entrances(site: Site) -> BaseGeometry:
    """Ground in front of the entrances, and on both sides of the openings that people walk through in walls."""
    openings = (part.buffer(ENTRANCE_FT, cap_style="flat", join_style="mitre") for part in passages(site))
    return shapely.union_all([*(_front(entrance) for entrance in site.entrances), *openings])


@lru_cache(maxsize=SITES)
def along_buildings(site: Site) -> BaseGeometry:
    """Strip round the buildings."""
    houses = site_shapes(site).buildings
    return shapely.union_all([house.buffer(HOUSE_BED_FT, join_style="mitre") for house in houses])


def at_terraces(site: Site, placed: Placed) -> BaseGeometry:
    """Ground between walls and the terraces before their doors."""
    return shapely.union_all([strip.ground for strip in house_strips(site, placed)])


def between_rooms(placed: Placed) -> BaseGeometry:
    """Gaps between rooms that face each other."""
    gaps = (_gap(one, other) for one, other in combinations(placed.layout.placements, 2))
    return shapely.union_all([gap for gap in gaps if gap is not None])


def screens(site: Site, relations: Sequence[Relation], placed: Placed) -> BaseGeometry:
    """Strip along the boundary, as wide as the view of a room has to be closed from an eye outside, cut square."""
    edge = along_boundary(site)
    views = (shapely.union(shapely.Point(eye), room).convex_hull for eye, room in _views(site, relations, placed))
    seen = (part for view in views for part in shapely.get_parts(edge.intersection(view)))
    return edge.intersection(shapely.union_all([box(*part.bounds) for part in seen]))


@lru_cache(maxsize=SITES)
def along_boundary(site: Site) -> BaseGeometry:
    """Ground along the boundary as deep as a bed that screens."""
    yard = site_shapes(site).boundary
    return yard.difference(yard.buffer(-SCREEN_FT, join_style="mitre"))


def round_water(placed: Placed) -> BaseGeometry:
    """Strip round ground that is kept for water, but where it is open to a nook until then."""
    kept = [room for room in placed.of_kind("reserve") if room.room.interim != "nook"]
    return shapely.union_all([room.shape.buffer(WATER_BED_FT, join_style="mitre") for room in kept])


def _inner_rings(site: Site) -> Iterator[tuple[Point, float]]:
    """Trunks with the radius of the inner root ring [ft]."""
    trunks = root_rings(site).inner_trunks
    return ((tree.at, trunks * tree.trunk_diameter_ft) for tree in site.trees)


def _ring(at: Point, radius_ft: float) -> Polygon:
    """Regular polygon round a circle, flat towards the axes."""
    corner_ft, turn = radius_ft / cos(pi / _RING_SIDES), 2 * pi / _RING_SIDES
    angles = [(side + 0.5) * turn for side in range(_RING_SIDES)]
    return Polygon([(at[0] + corner_ft * cos(angle), at[1] + corner_ft * sin(angle)) for angle in angles])


def _front(entrance: Entrance) -> Polygon:
    (x, y), (in_x, in_y), half = entrance.at, entrance.inward, entrance.width_ft / 2
    ends = ((-half, 0.0), (half, 0.0), (half, ENTRANCE_FT), (-half, ENTRANCE_FT))
    return Polygon([(x + along * in_y + deep * in_x, y - along * in_x + deep * in_y) for along, deep in ends])


def _gap(one: Placement, other: Placement) -> Polygon | None:
    left, right = max(one.x_ft, other.x_ft), min(one.right_ft, other.right_ft)
    low, high = max(one.y_ft, other.y_ft), min(one.top_ft, other.top_ft)
    least, most = BETWEEN_FT
    if left < right and least <= low - high <= most:
        return box(left, high, right, low)
    if low < high and least <= left - right <= most:
        return box(right, low, left, high)
    return None


def _views(site: Site, relations: Sequence[Relation], placed: Placed) -> Iterator[tuple[Point, Polygon]]:
    """Eyes outside with the rooms that must be out of their view."""
    eyes = {thing.name: thing.at for thing in site.surroundings if thing.at is not None}
    for relation in relations:
        if relation.kind == "out_of_view":
            for name, eye in (relation.between, relation.between[::-1]):
                room = placed.of(name)
                if room is not None and eye in eyes:
                    yield eyes[eye], room.shape
