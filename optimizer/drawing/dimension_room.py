"""Whether a dimension has room on a plan: its line, its figure, and the lines that join it to what it measures."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from shapely import LinearRing, LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.free_space import union_of
from optimizer.drawing.marks import Box, Dimension
from optimizer.drawing.outlines import polygon_of
from optimizer.layout import Placement, footprint
from optimizer.site import Site

_EDGE_FT = 0.2  # a line may run along the edge of a room, not over it


@dataclass(frozen=True, slots=True)
class Sheet:
    """What dimensions keep off, what is taken and rooms; what figures alone keep off; the plan that they stay on."""

    taken: tuple[BaseGeometry, ...]
    rooms: tuple[tuple[Placement, Polygon], ...]
    unwritten: BaseGeometry
    plan: Polygon

    @classmethod
    def of(
        cls,
        site: Site,
        placements: Sequence[Placement],
        taken: Sequence[BaseGeometry],
        unwritten: BaseGeometry,
        plan_box: Box,
    ) -> "Sheet":
        """Of a layout on its site; figures keep off edges of roofs, too."""
        roofs = (LinearRing(structure.outline) for structure in site.structures)
        rooms = tuple((placement, footprint(placement)) for placement in placements)
        return cls(tuple(taken), rooms, union_of(unwritten, *roofs), polygon_of(plan_box))


def first_clear(
    sheet: Sheet, placement: Placement, wanted: Sequence[Dimension], found: Sequence[Dimension]
) -> tuple[Dimension, ...]:
    """The first of a room's dimensions that is clear of everything, and of those found before; none where none is."""
    others = [floor for other, floor in sheet.rooms if other != placement]
    inner = [floor.buffer(-_EDGE_FT) for floor in others]
    blocked = (*sheet.taken, *others, *(_extent(earlier) for earlier in found))
    figures = [polygon_of(earlier.label.box) for earlier in found]
    strokes = (sheet.unwritten, *(stroke for earlier in found for stroke in _extensions(earlier)))
    for dimension in wanted:
        whole, figure = _extent(dimension), polygon_of(dimension.label.box)
        is_clear = sheet.plan.contains(whole) and not _any_meets(blocked, whole) and not _any_meets(strokes, figure)
        is_clear = is_clear and not any(_any_meets(figures, stroke) for stroke in _extensions(dimension))
        if is_clear and not _any_meets(inner, _between(dimension)):
            return (dimension,)
    return ()


def _any_meets(shapes: Sequence[BaseGeometry], shape: BaseGeometry) -> bool:
    return bool(shapely.intersects(np.array(shapes, dtype=object), shape).any())


@lru_cache(maxsize=256)
def _extent(dimension: Dimension) -> BaseGeometry:
    """Ground that a dimension takes; two in a row share an end."""
    return polygon_of(_slim_line(dimension)).union(polygon_of(dimension.label.box))


def _extensions(dimension: Dimension) -> tuple[LineString, ...]:
    """Thin lines from what is measured to the ends of the line, which may cross other lines but no figure."""
    if not dimension.offset_ft:
        return ()
    ends = zip((dimension.start, dimension.end), dimension.line, strict=True)
    return tuple(LineString(pair) for pair in ends)


def _between(dimension: Dimension) -> BaseGeometry:
    """Ground between what is measured and the line: over another room it would seem to measure that."""
    return Polygon([dimension.start, dimension.end, *reversed(dimension.line)])


def _slim_line(dimension: Dimension) -> Box:
    """Bounds of the line and its breadth without the ends, which lie on what it measures."""
    (x1, y1), (x2, y2) = dimension.line
    half, trim = dimension.size_ft / 2, 0.05
    low_x, high_x, low_y, high_y = min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2)
    if dimension.is_upright:
        return (low_x - half, low_y + trim, high_x + half, high_y - trim)
    return (low_x + trim, low_y - half, high_x - trim, high_y + half)
