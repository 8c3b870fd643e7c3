"""What is made of a plan for a screen: the plan without its sheet and with large names; numbers in the place of names,
for phones; and an area with a scale of feet or metres along two sides, for whoever decides where a room may stand.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from optimizer.drawing.marks import Area, Box, Drawing, Line, Mark, Text
from optimizer.drawing.outlines import ring_of_box
from optimizer.layout import Layout

NUMBER_SHARE: Final = 0.055
"""Size of a number, as a share of the plan's width: about 20 px on a phone."""
LABEL_SHARE: Final = 0.024
SIZE_SHARE: Final = 0.019
"""Size of the figure of a length, on a screen."""
MOST_LABELS: Final = 12
_ROUND_STEPS: Final = (1, 2, 5, 10, 20, 25, 50, 100, 200, 500)


def for_screen(drawing: Drawing) -> Drawing:
    """Drawing without its sheet, with the names of rooms alone, so large that they can be read in part of a window.

    A drawing that has no names of its own for a screen has those of small pictures.
    """
    names = drawing.on_screen
    texts = names.texts or tuple(replace(t, role="room_name") for t in drawing.texts if t.role == "room_name_large")
    marks = (*(mark for mark in drawing.marks if mark.role != "leader"), *names.leaders)
    size_ft = SIZE_SHARE * (drawing.plan_box[2] - drawing.plan_box[0])
    sizes = tuple(replace(size, size_ft=max(size.size_ft, size_ft)) for size in drawing.dimensions)
    return replace(drawing, sheet_box=drawing.plan_box, key=(), marks=marks, texts=texts, dimensions=sizes)


def plan_alone(drawing: Drawing) -> Drawing:
    """Drawing without its sheet, with all that is written on the plan itself."""
    foot_ft = drawing.plan_box[1]
    texts = tuple(text for text in drawing.texts if text.at[1] > foot_ft)
    return replace(drawing, sheet_box=drawing.plan_box, key=(), texts=texts)


def numbered(drawing: Drawing, layout: Layout) -> Drawing:
    """Drawing with each room's number, by the order of the layout, in the place of all texts."""
    x1, _, x2, _ = drawing.plan_box
    size = NUMBER_SHARE * (x2 - x1)
    texts = (
        Text("room_name_large", place.centre, str(number), min(size, 0.9 * min(place.width_ft, place.depth_ft)))
        for number, place in enumerate(layout.placements, start=1)
    )
    return replace(drawing, texts=tuple(texts))


def with_area(drawing: Drawing, area: Box | None, *, unit_ft: float) -> Drawing:
    """Drawing with a scale in the file's unit along left and bottom, and an area if one is given [ft]."""
    areas: tuple[Mark, ...] = ()
    if area is not None:
        areas = (Area("held_area", (ring_of_box(area),)),)
    lines, labels = zip(*_scale(drawing.plan_box, unit_ft), strict=True)
    return replace(drawing, marks=(*drawing.marks, *areas, *lines), texts=(*drawing.texts, *labels))


def _scale(box: Box, unit_ft: float) -> Iterator[tuple[Line, Text]]:
    """Lines across the plan at round numbers, each with its number at the edge; none so near to a corner of the plan
    that its number would be cut off.
    """
    x1, y1, x2, y2 = box
    size = LABEL_SHARE * (x2 - x1)
    step = _round_step(max(x2 - x1, y2 - y1) / unit_ft)
    for value in _round_values((x1 + size) / unit_ft, (x2 - size) / unit_ft, step):
        x = value * unit_ft
        yield Line("scale_line", ((x, y1), (x, y2))), Text("room_name_large", (x, y1 + size), f"{value}", size)
    for value in _round_values((y1 + size) / unit_ft, (y2 - size) / unit_ft, step):
        y = value * unit_ft
        yield Line("scale_line", ((x1, y), (x2, y))), Text("room_name_large", (x1 + size, y), f"{value}", size)


def _round_step(length: float) -> int:
    return next((step for step in _ROUND_STEPS if length / step <= MOST_LABELS), _ROUND_STEPS[-1])


def _round_values(low: float, high: float, step: int) -> range:
    return range(-int(-low // step) * step, int(high // step) * step + 1, step)
