"""Dimensions of a layout: each room's width and depth along its edges, each terrace's distance to house or boundary."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely import LineString, Polygon
from shapely import Point as PointShape
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.dimension_room import Sheet, first_clear
from optimizer.drawing.marks import TYPE_FT, Box, Dimension
from optimizer.drawing.outlines import box_of
from optimizer.drawing.words import Units, length_text, size_text
from optimizer.layout import Placement, radius_ft, shared_edge_ft
from optimizer.site import Point, Site

OFFSETS_FT = (1.3, 2.6, 3.9, 5.2)
"""Distances outside the edge that are tried, in sizes of type."""
FIGURE_SHARES = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74)
"""Where along a tie its figure may stand."""
LEAST_TIE_FT = 1.0
LONGEST_TIE_FT = 60.0


@dataclass(frozen=True, slots=True)
class Measured:
    """Dimensions of a plan, and the rooms whose width and depth are both among them."""

    dimensions: tuple[Dimension, ...]
    rooms: frozenset[str]


def dimensions(
    site: Site,
    placements: Sequence[Placement],
    *,
    taken: Sequence[BaseGeometry],
    unwritten: BaseGeometry,
    plan_box: Box,
    units: Units,
    scale: float,
) -> Measured:
    """All dimensions that find a free place outside the rooms, each clear of those before it.

    `taken` is what no dimension may cross: buildings, furniture and marks. A line may run under a roof's edge or over
    what is `unwritten`, planting and steps; its figure may not.
    """
    sheet = Sheet.of(site, placements, taken, unwritten, plan_box)
    found: tuple[Dimension, ...] = ()
    # Ties first: a size can move to the other side of its room, a tie cannot.
    for terrace in _terraces(site, placements):
        ties = (first_clear(sheet, place, tuple(_ties(site, place, units, scale)), found) for place in terrace)
        found += next(filter(None, ties), ())
    whole = set[str]()
    for place in placements:
        before, sizes = len(found), _sizes(place, units, scale)
        for wanted in sizes:
            found += first_clear(sheet, place, wanted, found)
        if len(found) == before + len(sizes):
            whole.add(place.room)
    return Measured(found, frozenset(whole))


def _terraces(site: Site, placements: Sequence[Placement]) -> Iterator[list[Placement]]:
    """Rooms that touch each other, directly or by others, the nearest to a building first: one tie places them all."""
    buildings = shapely.union_all([Polygon(building.outline) for building in site.buildings])
    rest = list(placements)
    while rest:
        terrace = [rest.pop(0)]
        for one in terrace:
            touching = [other for other in rest if shared_edge_ft(one, other) > 0]
            terrace += touching
            rest = [other for other in rest if other not in touching]
        yield sorted(terrace, key=lambda place: round(shapely.box(*box_of(place)).distance(buildings), 3))


def _sizes(placement: Placement, units: Units, scale: float) -> tuple[tuple[Dimension, ...], ...]:
    """Candidates for the width (below, above) and for the depth (left, right), the best first; a circle has one."""
    x1, y1, x2, y2 = box_of(placement)
    size_ft = TYPE_FT * scale
    if placement.is_circle:
        return (_across(placement, units, scale),)
    width, depth = length_text(placement.width_ft, units), length_text(placement.depth_ft, units)
    edges = (
        (width, ((x2, y1), (x1, y1)), ((x1, y2), (x2, y2))),
        (depth, ((x1, y1), (x1, y2)), ((x2, y2), (x2, y1))),
    )
    return tuple(
        tuple(Dimension(start, end, offset * scale, text, size_ft) for offset in OFFSETS_FT for start, end in sides)
        for text, *sides in edges
    )


def _across(placement: Placement, units: Units, scale: float) -> tuple[Dimension, ...]:
    """What a circle is across, measured between its sides and drawn outside of it."""
    (x, y), radius, size_ft = placement.centre, radius_ft(placement), TYPE_FT * scale
    level, upright = ((x + radius, y), (x - radius, y)), ((x, y - radius), (x, y + radius))
    return tuple(
        Dimension(start, end, radius + offset * scale, size_text(placement, units), size_ft)
        for offset in OFFSETS_FT
        for start, end in (level, level[::-1], upright, upright[::-1])
    )


def _ties(site: Site, placement: Placement, units: Units, scale: float) -> Iterator[Dimension]:
    """Straight lines from the room to a house, the shortest first; to the boundary where no house is opposite."""
    houses = [LineString([*building.outline, building.outline[0]]) for building in site.buildings]
    boundary = [LineString([*site.boundary, site.boundary[0]])]
    for targets in (houses, boundary):
        pairs = [pair for target in targets for pair in _straight(placement, target)]
        for start, end in sorted(pairs, key=lambda pair: round(_length(pair), 3)):
            if LEAST_TIE_FT < _length((start, end)) <= LONGEST_TIE_FT:
                text = length_text(_length((start, end)), units)
                yield from (Dimension(start, end, 0.0, text, TYPE_FT * scale, share) for share in FIGURE_SHARES)


def _straight(placement: Placement, target: LineString) -> Iterator[tuple[Point, Point]]:
    """From each side of the room, at some places along it, straight out to where the target is first met."""
    x1, y1, x2, y2 = box_of(placement)
    for share in (0.5,) if placement.is_circle else (0.5, 0.25, 0.75, 0.1, 0.9):
        x, y = x1 + share * (x2 - x1), y1 + share * (y2 - y1)
        for start, (dx, dy) in (((x, y1), (0, -1)), ((x, y2), (0, 1)), ((x1, y), (-1, 0)), ((x2, y), (1, 0))):
            ray = LineString([start, (start[0] + dx * LONGEST_TIE_FT, start[1] + dy * LONGEST_TIE_FT)])
            met = ray.intersection(target)
            if not met.is_empty:
                reach = PointShape(start).distance(met)
                yield (start, (start[0] + dx * reach, start[1] + dy * reach))


def _length(pair: tuple[Point, Point]) -> float:
    (x1, y1), (x2, y2) = pair
    return abs(x2 - x1) + abs(y2 - y1)
