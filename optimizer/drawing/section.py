"""A section along any straight line: ground, houses, rooms at their levels, roofs, trees, fences, eyes and the sun."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from math import atan2, cos, degrees, hypot, radians, sin, tan
from typing import Final

from shapely import Polygon

from optimizer.drawing.heights import room_levels
from optimizer.drawing.marks import Area, Box, Drawing, Line, Mark, Text
from optimizer.drawing.outlines import polygon_of
from optimizer.drawing.section_parts import Cut, Thing, around, earth_marks, rooms_along, standing
from optimizer.drawing.sheet import sheet_strip, words_in_use
from optimizer.drawing.type_width import width_of
from optimizer.drawing.words import length_text, moment_text, short_name
from optimizer.fields import sun_at, with_covers
from optimizer.fields.sun import LOWEST_ALTITUDE_DEG
from optimizer.layout import Layout, Placed
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

HEAD_ROOM_FT: Final = 9.0
RAY_FT: Final = 8.0
TEXT_FT: Final = 1.2
BEYOND_FT: Final = 4.0
WORDS: Final[dict[str, str]] = {
    "section_earth": "ground with the rooms in it",
    "section_ground": "ground as it is",
    "section_building": "building, cut",
    "section_room": "room at its level",
    "section_roof": "roof over",
    "section_crown": "kept tree, crown",
    "section_fence": "wall, fence or hedge",
    "section_boundary": "boundary",
    "section_eye": "eyes, seated or standing",
    "sun_ray": "sun, as it falls in this section",
}


def line_through(site: Site, layout: Layout, room: str | None) -> tuple[Point, Point]:
    """Find a line over the whole yard along the plan's y, through the middle of a room, the first where None."""
    x1, y1, x2, y2 = Polygon(site.boundary).bounds
    placement = layout.of(room) if room else next(iter(layout.placements), None)
    x = placement.centre[0] if placement else (x1 + x2) / 2
    return ((x, y1 - BEYOND_FT), (x, y2 + BEYOND_FT))


def draw_section(
    scenario: Scenario,
    placed: Placed,
    levels: Mapping[str, float],
    line: tuple[Point, Point],
    *,
    when: datetime | None,
    title: str,
) -> Drawing:
    """Draw a section from the first point to the second, left to right, heights at the same scale as lengths.

    `when` is a moment of the yard's own clock whose sun is shown, None for none. Raises ValueError for a line without
    length.
    """
    cut = Cut(with_covers(scenario.site, placed), *line)
    if cut.length_ft < 1.0:
        raise ValueError("a section needs two points at least a foot apart")
    things = (*around(cut), *rooms_along(cut, placed, levels, scenario), *standing(cut))
    marks = (
        *earth_marks(cut, placed.layout, room_levels(cut.site, placed.layout, levels)),
        *(mark for thing in things for mark in thing.marks),
    )
    names = _names(things)
    box = _box(cut, marks, names)
    ray, words = _sun(cut, when, box) if when else ((), ())
    strip = sheet_strip(
        box,
        words_in_use(WORDS, (*marks, *ray)),
        heading=(title, scenario.name),
        cautions=("Heights and lengths at the same scale (vertical exaggeration 1); levels above the file's datum.",),
        north_deg=None,
        units=scenario.units,
        scale=1.0,
    )
    said = ", ".join(thing.name for thing in things if thing.name)
    return Drawing(
        title=title,
        description=f"Section of {length_text(cut.length_ft, scenario.units)}. Along it: {said or 'open ground'}.",
        metric=scenario.units == "m",
        plan_box=box,
        sheet_box=strip.sheet_box,
        marks=(*marks, *ray),
        key=strip.marks,
        texts=(*names, *words, *strip.texts),
        dimensions=(),
    )


def _names(things: Sequence[Thing]) -> tuple[Text, ...]:
    """Set each name over its thing, higher where another is in the way."""
    found: list[Text] = []
    for thing in things:
        if thing.name:
            text = Text("section_name", (thing.at[0], thing.at[1] + TEXT_FT), short_name(thing.name), TEXT_FT)
            while any(_meet(text.box, other.box) for other in found):
                text = Text(text.role, (text.at[0], text.at[1] + 0.4), text.text, TEXT_FT)
            found.append(text)
    return tuple(found)


def _meet(one: Box, other: Box) -> bool:
    return bool(polygon_of(one).buffer(0.2).intersects(polygon_of(other)))


def _box(cut: Cut, marks: Sequence[Mark], names: Sequence[Text]) -> Box:
    corners = [point for mark in marks if isinstance(mark, Area) for point in mark.rings[0]]
    top = max([z for _, z in corners] + [text.box[3] for text in names])
    left = min([0.0, *(text.box[0] for text in names)])
    right = max([cut.length_ft, *(text.box[2] for text in names)])
    return (left - 2.0, min(z for _, z in corners), right + 2.0, top + HEAD_ROOM_FT)


def section_angle_deg(altitude_deg: float, plan_deg: float, start: Point, end: Point) -> float:
    """Angle of the sun's rays in the section, from its right end's horizon over the zenith: 0 to 180 [deg].

    The ray's part across the section falls away, so it stands steeper than the sun's altitude.
    """
    bearing = radians(plan_deg)
    length = hypot(end[0] - start[0], end[1] - start[1])
    along = (sin(bearing) * (end[0] - start[0]) + cos(bearing) * (end[1] - start[1])) / length
    return degrees(atan2(tan(radians(altitude_deg)), along))


def _sun(cut: Cut, when: datetime, box: Box) -> tuple[tuple[Mark, ...], tuple[Text, ...]]:
    """Draw a ray from the upper corner on the sun's side, with its head, and tell the altitude."""
    (altitude, bearing), words = sun_at(cut.site.place, when), moment_text(when)
    if altitude <= LOWEST_ALTITUDE_DEG:
        at = ((box[0] + box[2]) / 2, box[3] - 1.0)
        return (), (Text("section_sun", at, f"{words}: the sun is down", TEXT_FT),)
    turn = radians(section_angle_deg(altitude, bearing, cut.start, cut.end))
    text = f"{words}: sun {altitude:.0f}° above the horizon"
    width = width_of(text) * TEXT_FT
    is_right = cos(turn) > 0
    tail = (box[2] - 2.0 if is_right else box[0] + 2.0, box[3] - 1.0)
    tip = (tail[0] - RAY_FT * cos(turn), tail[1] - RAY_FT * sin(turn))
    head = tuple((tip[0] + 1.6 * cos(turn + side), tip[1] + 1.6 * sin(turn + side)) for side in (-0.3, 0.3))
    marks = (Line("sun_ray", (tail, tip)), Area("sun_head", ((tip, *head),)))
    aside = RAY_FT * abs(cos(turn)) + 2.0 + width / 2
    at = (tail[0] - aside if is_right else tail[0] + aside, tail[1])
    return marks, (Text("section_sun", at, text, TEXT_FT),)
