"""Walls, fences and hedges of a site: where they stop feet, and where they stop sight and sun."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Final

from shapely import LineString, Point, Polygon, get_parts, union_all
from shapely.geometry.base import BaseGeometry
from shapely.ops import substring

from optimizer.catalogue.heights import DEFAULT_HEIGHT_FT
from optimizer.fields.site_shapes import SITES, site_shapes
from optimizer.layout import TOLERANCE_FT, Placement, shared_edge_ft
from optimizer.site import Site, Wall

HALF_FT: Final = 0.01
"""Half of a wall's thickness: next to nothing, so that what stands at it touches it."""
_ON_LINE_FT: Final = 0.1
_LEAST_FT: Final = 0.01
Span = tuple[float, float]


def wall_height_ft(wall: Wall) -> float:
    """Height above the ground, the usual of its kind where the site gives none [ft]."""
    return DEFAULT_HEIGHT_FT[wall.kind] if wall.height_ft is None else wall.height_ft


def standing_parts(wall: Wall) -> tuple[LineString, ...]:
    """Parts of a wall's line that lie in none of its openings."""
    return tuple(_between(wall, (_span(wall, opening.at, opening.width_ft) for opening in wall.openings)))


def gates_of(wall: Wall) -> tuple[LineString, ...]:
    """Parts of a wall's line that gates close."""
    spans = (_span(wall, opening.at, opening.width_ft) for opening in wall.openings if opening.gate)
    return tuple(substring(LineString(wall.line), max(0.0, low), high) for low, high in spans)


@lru_cache(maxsize=SITES)
def walls_for_eyes(site: Site) -> tuple[tuple[Wall, LineString], ...]:
    """Parts of the walls that hide and shade: all but openings without a gate."""
    return tuple(
        (wall, part)
        for wall in site.walls
        for part in _between(wall, (_span(wall, o.at, o.width_ft) for o in wall.openings if o.gate is None))
    )


@lru_cache(maxsize=SITES)
def walls_for_feet(site: Site) -> tuple[LineString, ...]:
    """Parts of the walls that nobody walks through: all but openings whose gate is not locked.

    What stands on the boundary stops nobody more than the boundary does, and entrances stay open.
    """
    edge = site_shapes(site).boundary.exterior.buffer(_ON_LINE_FT)
    inner = (part.difference(edge) for wall in site.walls for part in _between(wall, _passages(wall)))
    return tuple(part for line in inner for part in get_parts(line) if part.length > _LEAST_FT)


@lru_cache(maxsize=SITES)
def passages(site: Site) -> tuple[LineString, ...]:
    """Openings of the walls that people walk through."""
    return tuple(
        substring(LineString(wall.line), max(0.0, low), high) for wall in site.walls for low, high in _passages(wall)
    )


@lru_cache(maxsize=SITES)
def barriers(site: Site) -> tuple[Polygon, ...]:
    """The same as ground that is walked round."""
    return tuple(part.buffer(HALF_FT, cap_style="flat", join_style="mitre") for part in walls_for_feet(site))


def open_edge_ft(site: Site, one: Placement, other: Placement) -> float:
    """Length of edge that two placed rooms share and that no wall stands on [ft]."""
    shared = shared_edge_ft(one, other)
    if not shared or not site.walls:
        return shared
    return sum(float(part.length) for part in open_edges(site, one, other))


def open_edges(site: Site, one: Placement, other: Placement) -> tuple[LineString, ...]:
    """Parts of the edge that two touching rooms share on which no wall stands."""
    left, right = max(one.x_ft, other.x_ft), min(one.right_ft, other.right_ft)
    low, top = max(one.y_ft, other.y_ft), min(one.top_ft, other.top_ft)
    edge = LineString([(left, low), (right, top)]).difference(_ground_at_walls(site))
    return tuple(part for part in get_parts(edge) if part.length > _LEAST_FT)


@lru_cache(maxsize=SITES)
def _ground_at_walls(site: Site) -> BaseGeometry:
    """Ground so near a wall that an edge there lies on it."""
    return union_all([part.buffer(TOLERANCE_FT, cap_style="flat") for part in walls_for_feet(site)])


def _passages(wall: Wall) -> Iterator[Span]:
    return (_span(wall, opening.at, opening.width_ft) for opening in wall.openings if opening.gate != "locked")


def _span(wall: Wall, at: tuple[float, float], width_ft: float) -> Span:
    middle = LineString(wall.line).project(Point(at))
    return middle - width_ft / 2, middle + width_ft / 2


def _between(wall: Wall, gaps: Iterable[Span]) -> Iterator[LineString]:
    """Parts of a wall's line that lie in none of the gaps."""
    line, start = LineString(wall.line), 0.0
    for low, high in (*sorted(gaps), (line.length, line.length)):
        if low - start > _LEAST_FT:
            yield substring(line, start, low)
        start = max(start, high)
