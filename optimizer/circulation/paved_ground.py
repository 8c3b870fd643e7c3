"""The ground that ways pave: their strips, and what lies between them and the terraces and walls they run along."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import combinations, pairwise
from math import dist
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.gaps import gaps_between, gaps_round
from optimizer.circulation.ground import obstacles_of_site
from optimizer.circulation.paving import Leg
from optimizer.fields import SITES, site_shapes
from optimizer.fields.door_zones import BUILT_UP_FT
from optimizer.fields.existing_paving import standing_paving
from optimizer.fields.house_strips import house_strips
from optimizer.fields.terraces import meets_walls
from optimizer.layout import TOLERANCE_FT, Placed, areas_only
from optimizer.site import Point, Site

JOINED_FT: Final = 3.0
"""A way that runs along a terrace, landing or other way nearer than this joins it; layout rule 26, common practice."""
JOINED_SQFT: Final = 60.0
"""A larger piece between them is no gap but ground of its own; common practice, no source."""
_SQUARE: Final = 1.5  # mitre of a square bend, and a little more: sharper bends are cut off
_ALONG_FT: Final = 4.0  # shorter pieces, as between bends and at branchings, do not run along another way
_CORNER_FT: Final = 3.0  # how far round a corner is drawn where legs meet
_LEAST_FT: Final = 0.01
_LEAST_SQFT: Final = 0.05  # what rounding leaves


def way_polygon(site: Site, placed: Placed, legs: Sequence[Leg]) -> BaseGeometry:
    """Ground that legs pave [ft]: outside rooms, buildings, landings and paving that stays, in the yard.

    A landing is built up to what stands within a foot of it, what lies between a wall and the terrace at its door is
    paved where it is no bed, and a way joins what it runs along.
    """
    there = standing_paving(site, placed.shapes)
    taken = shapely.union_all([_taken(site), there, *placed.shapes])
    strips = shapely.union_all([*map(_strip, legs), *_corners(legs), *_built_up(site, placed)])
    at_house, beds = _at_house(site, placed, strips, taken)
    along = shapely.union_all(list(_gaps(site, placed, legs, there))).difference(strips).difference(taken)
    gaps = along.difference(shapely.union(beds, _closed(site)))
    joined = [gap for gap in shapely.get_parts(gaps) if _LEAST_SQFT < gap.area < JOINED_SQFT]
    whole = shapely.union_all([strips, *at_house, *joined]) if at_house or joined else strips
    return areas_only(whole.intersection(site_shapes(site).boundary).difference(taken))


@lru_cache(maxsize=SITES)
def _taken(site: Site) -> BaseGeometry:
    """Ground of buildings and landings."""
    shapes = site_shapes(site)
    return shapely.union_all([*shapes.buildings, *(zone for _, zone in shapes.door_zones)])


@lru_cache(maxsize=SITES)
def _closed(site: Site) -> BaseGeometry:
    """Ground of the site on which no path may lie."""
    return shapely.union_all(list(obstacles_of_site(site)))


def _built_up(site: Site, placed: Placed) -> Iterator[Polygon]:
    """Ground between landings and the rooms that they are built up to, and between terraces and the walls that they
    are paved up to; a circle keeps clear of both.
    """
    landings = [zone for _, zone in site_shapes(site).door_zones]
    rooms = [room.shape for room in placed.paved if not room.placement.is_circle]
    yield from gaps_between(rooms, landings, BUILT_UP_FT + TOLERANCE_FT)
    terraces = [room.shape for room in placed.paved if meets_walls(room)]
    yield from gaps_between(terraces, site_shapes(site).buildings, BUILT_UP_FT + TOLERANCE_FT)


def _gaps(site: Site, placed: Placed, legs: Sequence[Leg], there: BaseGeometry) -> Iterator[Polygon]:
    """Ground between ways and the terraces, landings, old paving and other ways that they run along."""
    quads, long = _quads(legs), _quads(legs, least_ft=_ALONG_FT)
    old = [part for part in shapely.get_parts(there) if not part.is_empty]
    circles = [room.shape for room in placed.paved if room.placement.is_circle]
    rooms = [room.shape for room in placed.paved if not room.placement.is_circle]
    fixed = [*rooms, *(zone for _, zone in site_shapes(site).door_zones), *old]
    yield from gaps_between(quads, fixed, JOINED_FT - TOLERANCE_FT)
    yield from gaps_between(long, long, JOINED_FT - TOLERANCE_FT)
    for circle in circles:
        yield from gaps_round(quads, circle, JOINED_FT - TOLERANCE_FT)


def _at_house(
    site: Site, placed: Placed, paved: BaseGeometry, taken: BaseGeometry
) -> tuple[list[BaseGeometry], BaseGeometry]:
    """What is paved and what is planted between walls and the terraces before their doors."""
    strips = house_strips(site, placed)
    if not strips:
        return [], Polygon()
    there = shapely.union_all([paved, taken, _closed(site)])
    beds = shapely.union_all([strip.beds(there) for strip in strips])
    return [strip.ground.difference(shapely.union(beds, _closed(site))) for strip in strips], beds


def _strip(leg: Leg) -> BaseGeometry:
    if len(leg.points) < 2:
        return Polygon()
    return _along(leg.points, leg.width_ft)


def _along(points: Sequence[Point], width_ft: float) -> BaseGeometry:
    return LineString(points).buffer(width_ft / 2, cap_style="flat", join_style="mitre", mitre_limit=_SQUARE)


def _quads(legs: Sequence[Leg], *, least_ft: float = _LEAST_FT) -> list[Polygon]:
    """The straight pieces of legs, without their corners, from a length on."""
    lines = ((ends, leg.width_ft / 2) for leg in legs for ends in pairwise(leg.points))
    pieces = [(*ends, half_ft) for ends, half_ft in lines if dist(*ends) >= least_ft]
    if not pieces:
        return []
    starts, ends, half_ft = (np.array(part, dtype=float) for part in zip(*pieces, strict=True))
    step = ends - starts
    aside = np.stack([-step[:, 1], step[:, 0]], axis=1) * (half_ft / np.hypot(*step.T))[:, None]
    return list(shapely.polygons(np.stack([starts - aside, ends - aside, ends + aside, starts + aside], axis=1)))


def _corners(legs: Sequence[Leg]) -> Iterator[BaseGeometry]:
    """Ground round the corner of each two legs that meet, as of one way that bends there."""
    meeting: dict[Point, list[tuple[Point, float]]] = {}
    for leg in legs:
        for (x, y), before in ((leg.points[0], leg.points[1:2]), (leg.points[-1], leg.points[-2:-1])):
            meeting.setdefault((round(x, 2), round(y, 2)), []).extend((point, leg.width_ft) for point in before)
    for at, ends in meeting.items():
        for (one, width), (other, other_width) in combinations(ends, 2):
            yield _along([_towards(at, one), at, _towards(at, other)], min(width, other_width))


def _towards(at: Point, end: Point) -> Point:
    """Point of a line out of a corner, not far from it."""
    line = LineString([at, end])
    point = line.interpolate(min(_CORNER_FT, line.length))
    return (point.x, point.y)
