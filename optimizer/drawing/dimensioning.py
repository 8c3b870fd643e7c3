"""Dimensions of a layout: each room's width and depth along its edges, and its distance to the house or boundary."""

from collections.abc import Iterator, Sequence

from shapely import LinearRing, LineString
from shapely import Point as PointShape
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.free_space import union_of
from optimizer.drawing.marks import Box, Dimension
from optimizer.drawing.outlines import box_of, polygon_of
from optimizer.drawing.words import Units, length_text
from optimizer.layout import Placement
from optimizer.site import Point, Site

TEXT_FT = 0.85
OFFSETS_FT = (1.3, 2.4, 3.6, -1.3, -2.4)
"""Distances from the edge that are tried, outside first [ft]."""
LEAST_TIE_FT = 1.0
LONGEST_TIE_FT = 60.0


def dimensions(
    site: Site, placements: Sequence[Placement], *, taken: BaseGeometry, plan_box: Box, units: Units, scale: float
) -> tuple[Dimension, ...]:
    """All dimensions that find a free place, each clear of those before it.

    `taken` is what no dimension may cross: labels, furniture and buildings; nor may one cross another room. A line may
    run under a roof's edge, its figure may not.
    """
    size_ft = TEXT_FT * scale
    roofs = union_of(*(LinearRing(structure.outline) for structure in site.structures))
    found: tuple[Dimension, ...] = ()
    # Ties first: a size can move to the other side of its room, a tie cannot.
    ties = [(placement, tuple(_ties(site, placement, units, size_ft))) for placement in placements]
    sizes = [(placement, wanted) for placement in placements for wanted in _sizes(placement, units, size_ft)]
    for placement, wanted in (*ties, *sizes):
        others = (box_of(other) for other in placements if other != placement)
        blocked = union_of(taken, *others, *(_extent(earlier) for earlier in found))
        found += _first_clear(wanted, blocked, roofs, plan_box)
    return found


def _sizes(placement: Placement, units: Units, size_ft: float) -> tuple[tuple[Dimension, ...], ...]:
    """Candidates for the width (below, above) and for the depth (left, right), the best first."""
    x1, y1, x2, y2 = box_of(placement)
    width, depth = length_text(placement.width_ft, units), length_text(placement.depth_ft, units)
    edges = (
        (width, ((x2, y1), (x1, y1)), ((x1, y2), (x2, y2))),
        (depth, ((x1, y1), (x1, y2)), ((x2, y2), (x2, y1))),
    )
    return tuple(
        tuple(
            Dimension(start, end, offset * size_ft / TEXT_FT, text, size_ft)
            for offset in OFFSETS_FT
            for start, end in sides
        )
        for text, *sides in edges
    )


def _ties(site: Site, placement: Placement, units: Units, size_ft: float) -> Iterator[Dimension]:
    """Straight lines from the room to a house, the shortest first; to the boundary where no house is opposite."""
    houses = [LineString([*building.outline, building.outline[0]]) for building in site.buildings]
    boundary = [LineString([*site.boundary, site.boundary[0]])]
    for targets in (houses, boundary):
        pairs = [pair for target in targets for pair in _straight(placement, target)]
        for start, end in sorted(pairs, key=lambda pair: round(_length(pair), 3)):
            if LEAST_TIE_FT < _length((start, end)) <= LONGEST_TIE_FT:
                yield Dimension(start, end, 0.0, length_text(_length((start, end)), units), size_ft)


def _straight(placement: Placement, target: LineString) -> Iterator[tuple[Point, Point]]:
    """From each side of the room, at some places along it, straight out to where the target is first met."""
    x1, y1, x2, y2 = box_of(placement)
    for share in (0.5, 0.25, 0.75, 0.1, 0.9):
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


def _first_clear(
    wanted: Sequence[Dimension], blocked: BaseGeometry, roofs: BaseGeometry, plan_box: Box
) -> tuple[Dimension, ...]:
    plan = polygon_of(plan_box)
    for dimension in wanted:
        whole, figure = _extent(dimension), polygon_of(dimension.label.box)
        if plan.contains(whole) and not blocked.intersects(whole) and not roofs.intersects(figure):
            return (dimension,)
    return ()


def _extent(dimension: Dimension) -> BaseGeometry:
    """Ground that a dimension takes; two in a row share an end."""
    return polygon_of(_slim_line(dimension)).union(polygon_of(dimension.label.box))


def _slim_line(dimension: Dimension) -> Box:
    """Bounds of the line and its breadth without the ends, which lie on what it measures."""
    (x1, y1), (x2, y2) = dimension.line
    half, trim = dimension.size_ft / 2, 0.05
    low_x, high_x, low_y, high_y = min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2)
    if dimension.is_upright:
        return (low_x - half, low_y + trim, high_x + half, high_y - trim)
    return (low_x + trim, low_y - half, high_x - trim, high_y + half)
