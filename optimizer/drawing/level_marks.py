"""Level marks: a small triangle with the height of each paved room above the datum, in it or else close beside."""

from collections.abc import Mapping
from typing import Final

from shapely import distance
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.free_space import boxes_about, by_distance, centres_within, first_free, union_of
from optimizer.drawing.marks import TYPE_FT, Area, Mark, Text
from optimizer.drawing.outlines import inner_box_of
from optimizer.drawing.type_width import width_of
from optimizer.drawing.words import Units, level_text
from optimizer.layout import Placed, Placement, footprint
from optimizer.site import Point

ROLE: Final = "level_mark"
_EDGE_FT: Final = 0.7  # off the room's border course
_BESIDE_FT: Final = 1.5
"""A mark beside a room is so near to it, and farther than this from any other."""
_GAP: Final = 0.35  # between triangle and figure, and round both, as a share of the text's size


def level_marks(
    placed: Placed,
    levels: Mapping[str, float],
    *,
    taken: BaseGeometry,
    beside: BaseGeometry,
    units: Units,
    scale: float,
) -> tuple[tuple[Mark, ...], tuple[Text, ...]]:
    """Triangles and figures of the rooms whose level [ft] is known, each at the free place nearest to a corner.

    A room that is full has its mark close beside it, off all that is taken and what is written or lies `beside` rooms.
    """
    marks: list[Mark] = []
    texts: list[Text] = []
    size = TYPE_FT * scale
    for placement in (room.placement for room in placed if room.name in levels):
        figure = level_text(levels[placement.room], units)
        width, height = size * (1 + 3 * _GAP + width_of(figure)), size * (1 + 2 * _GAP)
        at = _within(placement, taken, width, height) or _close_by(placement, placed, beside, width, height)
        if at is not None:
            left = at[0] - width / 2 + _GAP * size
            marks.append(triangle((left + size / 2, at[1]), size))
            texts.append(Text("level", (left + size * (1 + _GAP), at[1]), figure, size, anchor="start"))
    return tuple(marks), tuple(texts)


def _within(placement: Placement, taken: BaseGeometry, width_ft: float, height_ft: float) -> Point | None:
    x1, y1, x2, y2 = inner_box_of(placement)
    within = (x1 + _EDGE_FT, y1 + _EDGE_FT, x2 - _EDGE_FT, y2 - _EDGE_FT)
    centres = centres_within(within, width_ft=width_ft, height_ft=height_ft, step_ft=0.5)
    return first_free(by_distance(centres, (x1, y1)), taken, width_ft=width_ft, height_ft=height_ft)


def _close_by(
    placement: Placement, placed: Placed, beside: BaseGeometry, width_ft: float, height_ft: float
) -> Point | None:
    """Nearest free place beside a room that is no nearer to another."""
    own = footprint(placement)
    others = union_of(*(room.shape.buffer(_BESIDE_FT) for room in placed if room.name != placement.room))
    window = own.buffer(_BESIDE_FT + width_ft).bounds
    centres = centres_within(window, width_ft=width_ft, height_ft=height_ft, step_ft=0.5)
    near = centres[distance(boxes_about(centres, width_ft=width_ft, height_ft=height_ft), own) <= _BESIDE_FT]
    ordered = by_distance(near, placement.centre, edge_of=own)
    return first_free(ordered, own, others, beside, width_ft=width_ft, height_ft=height_ft)


def triangle(at: Point, size_ft: float) -> Area:
    """A triangle that stands on its tip."""
    (x, y), half = at, size_ft / 2
    return Area(ROLE, (((x - half, y + 0.8 * half), (x + half, y + 0.8 * half), (x, y - 0.8 * half)),))
