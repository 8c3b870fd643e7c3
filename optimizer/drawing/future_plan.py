"""The plan of one future of held ground: how it lies there, what it keeps or misses, its way in, and what bars one."""

from collections.abc import Iterator
from dataclasses import replace
from math import dist
from typing import Final

from shapely import Polygon

from optimizer.appraisal import Outlook
from optimizer.catalogue import sized_rooms
from optimizer.circulation import way_polygon
from optimizer.concepts import Option
from optimizer.concepts.future_cautions import future_cautions
from optimizer.concepts.future_words import now_or_later_words, standing_words
from optimizer.concepts.words import listed
from optimizer.derived import Distance
from optimizer.drawing.audience import Audience
from optimizer.drawing.backdrop import Caption, plan_sheet, room_texts
from optimizer.drawing.label_forms import LARGE_NAME_FT, large_name
from optimizer.drawing.marks import TYPE_FT, Area, Circle, Dimension, Drawing, Line, Mark, Text
from optimizer.drawing.outlines import areas_of
from optimizer.drawing.room_marks import floor_marks
from optimizer.drawing.sheet import LEGEND_WORDS
from optimizer.drawing.sheet_size import text_scale
from optimizer.drawing.type_width import width_of
from optimizer.drawing.words import Units, length_text
from optimizer.layout import Layout, Placed, placed_of
from optimizer.planting import planting_of
from optimizer.scenario import Scenario
from optimizer.site import Point

WAY_ROLE: Final = "future_way"
MIDDLE_ROLE: Final = "future_middle"
BARS_ROLE: Final = "barring"
MISS_ROLE: Final = "missed"
WORDS: Final[dict[str, str]] = {
    **LEGEND_WORDS,
    "buried_line": "line in the ground",
    "future_ground": "deck and service space",
    "future_water": "water, not there yet",
    "future_pad": "its equipment",
    "future_barrier": "barrier that it will need",
    MISS_ROLE: "too near",
    BARS_ROLE: "bars the way",
}
_FAR: Final = 2.0
"""A distance so many times what is asked says nothing, unless it is short all the same or the nearest to a miss."""
_SHORT_FT: Final = 20.0
_NO_FARTHER_FT: Final = 1.5
_SAME_PLACE_FT: Final = 4.0


def draw_future(scenario: Scenario, option: Option, outlook: Outlook, *, audience: Audience = "designer") -> Drawing:
    """Draw one future of a concept on the yard: to a designer with the distances that it keeps and lines in the ground,
    to an owner with those alone that it misses.
    """
    placed = placed_of(sized_rooms(scenario.brief), option.layout)
    scale, units = text_scale(scenario.site), scenario.units
    standing = standing_words(outlook)
    drawing = plan_sheet(
        scenario,
        option.layout,
        (*_ground_marks(scenario, option, placed, audience), *_way_marks(outlook), *_fit_marks(outlook)),
        _texts(option.layout, outlook, scale),
        Caption(
            title=f"{option.title}: later {outlook.future}",
            description=f"{scenario.name}: a later {outlook.future} on the {outlook.room}, which {standing}.",
            words=WORDS | _way_words(outlook, units),
            notes=tuple(_notes(scenario, outlook, standing)),
        ),
        over=(*_barring_marks(outlook), *_missed_marks(outlook)),
    )
    return replace(drawing, dimensions=tuple(_dimensions(outlook, units, scale, audience)))


def _ground_marks(scenario: Scenario, option: Option, placed: Placed, audience: Audience) -> Iterator[Mark]:
    """What a way in crosses and what the future lies on or keeps off: beds, paved ways, floors, keep-outs."""
    site = scenario.site
    paths = way_polygon(site, placed, option.appraisal.legs)
    for bed in planting_of(site, scenario.brief.relations, placed, paths).beds:
        yield from areas_of("bed", bed.outline)
    yield from areas_of("path", paths)
    yield from floor_marks(placed)
    yield from (Area("keep_out", (area.outline,)) for area in site.keep_outs)
    if audience == "designer":
        yield from (Line("buried_line", line.line) for line in site.utility_lines)


def _way_marks(outlook: Outlook) -> Iterator[Mark]:
    yield from (Area(WAY_ROLE, (ring,)) for ring in outlook.access.swept)
    if outlook.access.is_found:
        yield Line(MIDDLE_ROLE, outlook.access.line)


def _fit_marks(outlook: Outlook) -> Iterator[Mark]:
    fit = outlook.fit
    yield Area("future_ground", (fit.ground,))
    yield Area("future_water", (fit.water,))
    if fit.pad is not None:
        yield Area("future_pad", (fit.pad,))
    yield from (Line("future_barrier", line) for line in fit.barrier)


def _barring_marks(outlook: Outlook) -> Iterator[Mark]:
    """The things that bar a vehicle, and where it comes no farther."""
    for barred in outlook.access.barred:
        yield from (Area(BARS_ROLE, (ring,)) for rings in barred.grounds for ring in rings)
    yield from (Circle("no_farther", at, _NO_FARTHER_FT) for at in _stops(outlook))


def _stops(outlook: Outlook) -> dict[Point, list[str]]:
    """Vehicles by the place where they come no farther; places close by are one."""
    found: dict[Point, list[str]] = {}
    for barred in outlook.access.barred:
        if barred.at is not None:
            near = (at for at in found if dist(at, barred.at) < _SAME_PLACE_FT)
            found.setdefault(next(near, barred.at), []).append(barred.vehicle)
    return found


def _missed_marks(outlook: Outlook) -> Iterator[Mark]:
    return (Line(MISS_ROLE, one.line) for one in outlook.fit.distances if not one.is_kept and one.found_ft > 0)


def _dimensions(outlook: Outlook, units: Units, scale: float, audience: Audience) -> Iterator[Dimension]:
    for number, one in enumerate(outlook.fit.distances):
        is_told = audience == "designer" and (number == 0 or _is_near(one))
        if one.found_ft > 0 and (is_told or not one.is_kept):
            found, asked = length_text(one.found_ft, units), length_text(one.asked_ft, units)
            words = found if one.is_kept else f"{found} of {asked}"
            yield Dimension(one.line[0], one.line[-1], 0.0, words, TYPE_FT * scale)


def _is_near(one: Distance) -> bool:
    return one.found_ft <= max(_FAR * one.asked_ft, _SHORT_FT)


def _texts(layout: Layout, outlook: Outlook, scale: float) -> tuple[Text, ...]:
    """Names of the rooms, of the future on its water, and of what is barred where it comes no farther."""
    others = [place for place in layout.placements if place.room != outlook.room]
    large = (text for place in others for text in large_name(place))
    names = room_texts(Layout(tuple(others)), lambda _: "", scale)
    return (*names, *large, *_future_name(outlook, scale), *_barred_names(outlook, scale))


def _future_name(outlook: Outlook, scale: float) -> Iterator[Text]:
    left, low, right, top = Polygon(outlook.fit.water).bounds
    at, wide = ((left + right) / 2, (low + top) / 2), max(right - left, 0.8 * (top - low))
    fits_ft = wide / width_of(outlook.future)
    yield Text("room_name", at, outlook.future, min(TYPE_FT * scale, fits_ft))
    yield Text("room_name_large", at, outlook.future, max(LARGE_NAME_FT[1], min(LARGE_NAME_FT[0], fits_ft)))


def _barred_names(outlook: Outlook, scale: float) -> Iterator[Text]:
    for (x, y), vehicles in _stops(outlook).items():
        at = (x + _NO_FARTHER_FT, y + (_NO_FARTHER_FT + 1.0) * scale)
        # It ends at the mark: entrances lie at the edge of a yard, and what bars a way seldom far from one.
        yield Text("barred", at, f"{listed(vehicles)}: no farther", TYPE_FT * scale, anchor="end")


def _way_words(outlook: Outlook, units: Units) -> dict[str, str]:
    return {WAY_ROLE: f"its way in, {length_text(outlook.access.width_ft, units)} wide"}


def _notes(scenario: Scenario, outlook: Outlook, standing: str) -> Iterator[str]:
    access = outlook.access
    brought = f": by {access.vehicle} from the {access.gate}" if outlook.is_open else ""
    yield f"A later {outlook.future} on the {outlook.room} {standing}{brought}."
    if money := now_or_later_words(outlook, scenario.currency):
        yield money
    yield from future_cautions(scenario, (outlook,))
