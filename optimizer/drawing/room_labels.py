"""Name, size and area of each room, where the furniture leaves space for them; else beside the room with a leader."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.free_space import by_distance, centres_within, first_free, union_of
from optimizer.drawing.marks import GLYPH_WIDTH, Area, Box, Line, Mark, Text
from optimizer.drawing.outlines import box_of, polygon_of, ring_of_box
from optimizer.drawing.words import Units, area_text, short_name, size_text
from optimizer.layout import Placement
from optimizer.site import Point

NAME_FT = 1.3
FACTS_FT = 0.95
LINE_STEP = 1.3
MARGIN_FT = 0.3
LEADER_REACH_FT = 24.0
BAND_FT = 2.5
"""Left free around every room, so that its dimension fits between it and a label."""
NEAR_FT = 3.8
"""A label this near to its room needs no leader."""
LARGE_MARGIN_FT = 0.8
LARGE_NAME_FT = (3.4, 1.8)
"""Greatest and least size of a name in a small picture [ft]."""

Lines = tuple[tuple[str, str, float], ...]
"""Role, text and size [ft] of each line of a label."""


@dataclass(frozen=True, slots=True)
class Label:
    """The lines of a room's label, what it covers, and its leader or the plate under it."""

    texts: tuple[Text, ...]
    box: Box
    marks: tuple[Mark, ...] = ()


def room_label(
    placement: Placement, *, inside: BaseGeometry, outside: BaseGeometry, plan_box: Box, units: Units, scale: float
) -> Label:
    """Label of one room.

    `inside` is what its floor already carries, `outside` what a label beside it may not cover: rooms, buildings and
    earlier labels. The last resort is a plate on the floor, over the furniture.
    """
    forms = tuple(_forms(placement, units, scale))
    for lines in forms:
        if (centre := _centre_inside(placement, lines, inside)) is not None:
            return Label(*_set_lines(lines, centre))
    for lines in forms[1:2]:
        if (beside := _beside(placement, lines, outside, plan_box)) is not None:
            return beside
    texts, bounds = _set_lines(forms[-1], placement.centre)
    return Label(texts, bounds, (Area("label_plate", (ring_of_box(bounds),)),))


def large_name(placement: Placement) -> tuple[Text, ...]:
    """Write the name alone, a word a line, as large as its room bears, for small pictures; none if it would spill."""
    words = short_name(placement.room).split()
    longest = max(len(word) for word in words)
    size = min(
        LARGE_NAME_FT[0],
        (placement.width_ft - 2 * LARGE_MARGIN_FT) / (longest * GLYPH_WIDTH),
        (placement.depth_ft - 2 * LARGE_MARGIN_FT) / (len(words) * LINE_STEP),
    )
    if size < LARGE_NAME_FT[1]:
        return ()
    lines = tuple(("room_name_large", word, size) for word in words)
    return _set_lines(lines, placement.centre)[0]


def _forms(placement: Placement, units: Units, scale: float) -> Iterator[Lines]:
    """Ways to write the label, the best first."""
    name = short_name(placement.room)
    size, area = size_text(placement.width_ft, placement.depth_ft, units), area_text(placement.area_sqft, units)
    for shrink in (1.0, 0.85, 0.72):
        large, small = NAME_FT * scale * shrink, FACTS_FT * scale * shrink
        yield (("room_name", name, large), ("room_size", size, small), ("room_size", area, small))
        yield (("room_name", name, large), ("room_size", f"{size}, {area}", small))


def _extent(lines: Lines) -> tuple[float, float]:
    width = max(len(text) * GLYPH_WIDTH * size for _, text, size in lines)
    return (width + 2 * MARGIN_FT, sum(size * LINE_STEP for *_, size in lines) + 2 * MARGIN_FT)


def _set_lines(lines: Lines, centre: Point) -> tuple[tuple[Text, ...], Box]:
    """Set the lines one under another about a centre, and the box around them."""
    width, height = _extent(lines)
    top = centre[1] + height / 2 - MARGIN_FT
    texts: list[Text] = []
    for role, text, size in lines:
        texts.append(Text(role, (centre[0], top - size * LINE_STEP / 2), text, size))
        top -= size * LINE_STEP
    bounds = (centre[0] - width / 2, centre[1] - height / 2, centre[0] + width / 2, centre[1] + height / 2)
    return (tuple(texts), bounds)


def _centre_inside(placement: Placement, lines: Lines, inside: BaseGeometry) -> Point | None:
    width, height = _extent(lines)
    centres = centres_within(box_of(placement), width_ft=width, height_ft=height, step_ft=0.5)
    return first_free(by_distance(centres, placement.centre), inside, width_ft=width, height_ft=height)


def _beside(placement: Placement, lines: Lines, outside: BaseGeometry, plan_box: Box) -> Label | None:
    width, height = _extent(lines)
    room = polygon_of(box_of(placement))
    window = room.buffer(LEADER_REACH_FT).intersection(polygon_of(plan_box)).bounds
    centres = centres_within(window, width_ft=width, height_ft=height, step_ft=1.0)
    nearest = by_distance(centres, placement.centre, edge_of=room)
    centre = first_free(nearest, outside, width_ft=width, height_ft=height)
    if centre is None:
        return None
    texts, bounds = _set_lines(lines, centre)
    if polygon_of(bounds).distance(room) < NEAR_FT:
        return Label(texts, bounds)
    start, end = shapely.shortest_line(polygon_of(bounds), room.buffer(-min(room.length / 40, 0.8))).coords
    return Label(texts, bounds, (Line("leader", (start, end)),))


def label_rooms(
    placements: Sequence[Placement],
    fittings: Sequence[BaseGeometry],
    *,
    taken: BaseGeometry,
    plan_box: Box,
    units: Units,
    scale: float,
) -> tuple[Label, ...]:
    """Labels of all rooms, each clear of those before it; `fittings[i]` is what stands in room i."""
    floors = [polygon_of(box_of(placement)).buffer(BAND_FT * scale) for placement in placements]
    labels: tuple[Label, ...] = ()
    for placement, fitting in zip(placements, fittings, strict=True):
        earlier = union_of(*(label.box for label in labels))
        labels += (
            room_label(
                placement,
                inside=union_of(fitting, earlier),
                outside=union_of(taken, earlier, *floors),
                plan_box=plan_box,
                units=units,
                scale=scale,
            ),
        )
    return labels
