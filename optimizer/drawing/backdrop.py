"""What the pictures of one question share: the yard in outline, the rooms' names with a figure, the sheet around."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from shapely import Polygon

from optimizer.drawing.label_forms import LINE_STEP
from optimizer.drawing.marks import TYPE_FT, Area, Drawing, Line, Mark, Text
from optimizer.drawing.outlines import areas_of, ring_of
from optimizer.drawing.paving_marks import paving_marks
from optimizer.drawing.sheet import sheet_strip, words_in_use
from optimizer.drawing.sheet_size import plan_box_of, text_scale
from optimizer.drawing.site_marks import standing_marks, surrounding_marks
from optimizer.drawing.type_width import width_of
from optimizer.drawing.words import short_name
from optimizer.layout import Layout, Placement, footprint
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

_ROOM_SHARE = 0.94  # of a room's width that its name may take
_UNWANTED = ("root_zone", "utility", "crown_inner")


def under_marks(site: Site, layout: Layout) -> tuple[Mark, ...]:
    """Neighbours, fences, the bare ground, and paving that stays."""
    plan_box = plan_box_of(site)
    around = (mark for thing in site.surroundings for mark in surrounding_marks(thing, plan_box))
    rooms = [footprint(placement) for placement in layout.placements]
    return (*around, *areas_of("bare_ground", Polygon(site.boundary)), *paving_marks(site, rooms))


def over_marks(site: Site, layout: Layout) -> tuple[Mark, ...]:
    """Outlines of the rooms, house, roofs, trees and boundary; fences again, so that no colour hides them."""
    rooms = (Area("room_outline", (ring_of(placement),)) for placement in layout.placements)
    standing = (mark for mark in standing_marks(site) if mark.role not in _UNWANTED)
    fences = (Line("fence", thing.line) for thing in site.surroundings if thing.line is not None)
    return (*rooms, *standing, *fences)


def room_texts(
    layout: Layout, figure_of: Callable[[Placement], str], scale: float, *, marked: Point | None = None
) -> tuple[Text, ...]:
    """Each room's name in its middle, a word a line in a narrow room, a figure below it; all below a `marked` middle.

    They are of one size; a figure may reach over the edge of a small room.
    """
    return tuple(
        text
        for placement in layout.placements
        for text in _room_text(placement, figure_of(placement), scale, is_marked=placement.centre == marked)
    )


def _room_text(placement: Placement, figure: str, scale: float, *, is_marked: bool) -> Iterator[Text]:
    (x, y), name, size_ft = placement.centre, short_name(placement.room), TYPE_FT * scale
    is_narrow = width_of(name) * size_ft > _ROOM_SHARE * placement.width_ft
    lines = [("room_name", line) for line in (name.split() if is_narrow else [name])]
    lines += [("room_size", figure)] if figure else []
    top = y + (len(lines) - 1) / 2 * LINE_STEP * size_ft
    top -= (1.05 + LINE_STEP / 2 * len(lines)) * size_ft if is_marked else 0.0
    for row, (role, line) in enumerate(lines):
        yield Text(role, (x, top - row * LINE_STEP * size_ft), line, size_ft)


@dataclass(frozen=True, slots=True)
class Caption:
    """Words of a picture: title, description for who cannot see it, legend by role, sentences below it."""

    title: str
    description: str
    words: Mapping[str, str]
    notes: tuple[str, ...]


def plan_sheet(
    scenario: Scenario,
    layout: Layout,
    marks: Iterable[Mark],
    texts: Iterable[Text],
    caption: Caption,
    *,
    over: Iterable[Mark] = (),
) -> Drawing:
    """Sheet of one picture on the plan: `marks` lie between the bare ground and the outlines of what stands, what is
    `over` on top of all.
    """
    site, plan_box, scale = scenario.site, plan_box_of(scenario.site), text_scale(scenario.site)
    drawn = (*under_marks(site, layout), *marks, *over_marks(site, layout), *over)
    strip = sheet_strip(
        plan_box,
        words_in_use(caption.words, drawn),
        heading=(caption.title, scenario.name),
        cautions=caption.notes,
        north_deg=site.place.plan_up_bearing_deg,
        units=scenario.units,
        scale=scale,
    )
    return Drawing(
        title=caption.title,
        description=caption.description,
        metric=scenario.units == "m",
        plan_box=plan_box,
        sheet_box=strip.sheet_box,
        marks=drawn,
        key=strip.marks,
        texts=(*texts, *strip.texts),
        dimensions=(),
    )
