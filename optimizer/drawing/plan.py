"""The plan of one layout, drawn once for every writer."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from shapely import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.appraisal import FinishPlan, Outlook, finish_plan, finish_take_off
from optimizer.circulation import Leg, Way
from optimizer.drawing.annotations import Said, Underfoot, annotate
from optimizer.drawing.audience import Audience, shown_to
from optimizer.drawing.door_section import door_section
from optimizer.drawing.extra_marks import extra_marks
from optimizer.drawing.finish_marks import capped, finish_legend, finish_marks, finish_words
from optimizer.drawing.flight_marks import flight_marks
from optimizer.drawing.free_space import union_of
from optimizer.drawing.future_marks import banded, future_legend, future_marks, told_rooms
from optimizer.drawing.heights import graded_levels
from optimizer.drawing.marks import Area, Circle, Drawing, Line, Mark
from optimizer.drawing.notable_marks import Notable, notable_marks
from optimizer.drawing.opening_marks import door_zone_marks, door_zones
from optimizer.drawing.outlines import areas_of
from optimizer.drawing.paving_marks import paving_marks
from optimizer.drawing.pool_marks import pool_marks
from optimizer.drawing.room_marks import fitting_marks, floor_marks
from optimizer.drawing.sheet import LEGEND_WORDS, sheet_strip, with_inset, words_in_use
from optimizer.drawing.sheet_size import plan_box_of, text_scale
from optimizer.drawing.site_marks import ground_marks, standing_marks
from optimizer.drawing.terrace_marks import terrace_marks
from optimizer.drawing.words import Units, area_text, kept_for, length_text, size_text
from optimizer.fields import ground_of
from optimizer.layout import Layout, Placed
from optimizer.planting import Planting, planting_of
from optimizer.scenario import Scenario
from optimizer.site import Site


@dataclass(frozen=True, slots=True, eq=False)
class Paths:
    """Paved ground of the ways [ft], the legs that it is laid on, what the plan points out on them, and what may come
    later, with its ways in.
    """

    area: BaseGeometry = field(default_factory=Polygon)
    legs: tuple[Leg, ...] = ()
    notable: Notable = field(default_factory=Notable)
    later: tuple[Outlook, ...] = ()


def draw_plan(
    scenario: Scenario,
    placed: Placed,
    ways: Sequence[Way],
    *,
    title: str,
    paths: Paths | None = None,
    cautions: Sequence[str] = (),
    audience: Audience = "designer",
) -> Drawing:
    """Draw a layout on its site, for a designer or clean for an owner.

    `ways` are the walks, on which steps may lie. `paths` is the paved ground of the ways, None
    where none is paved. `cautions` are sentences for below the standing caution of the sheet.
    """
    site, layout = scenario.site, placed.layout
    plan_box, scale, units = plan_box_of(site), text_scale(site), scenario.units
    paths = paths or Paths()
    planting = planting_of(site, scenario.brief.relations, placed, paths.area)
    finish = finish_plan(site, scenario.brief.finish, placed, paths.legs, paths.area)
    is_designers = audience == "designer"
    levels = _levels(site, placed, ways) if is_designers else {}
    pointed = _pointed(paths, site, layout, scale) if is_designers else ()
    laid = finish_words(finish, finish_take_off(finish, placed), scenario.brief, units) if is_designers else ()
    water = tuple(pool_marks(site, placed.once, paths.area))
    risers = tuple(flight_marks(site, placed, ways, paths.legs, paths.area)) if ways else ()
    standing = (*risers, *standing_marks(site), *extra_marks(scenario, placed), *water, *future_marks(paths.later))
    drawn = (*_laid_marks(placed, paths, planting, finish, site), *standing)
    marks = (*shown_to(audience, drawn), *pointed)
    underfoot = _underfoot(site, paths, planting, risers, water, pointed)
    said = Said(_purposes(scenario), levels, audience)
    written = annotate(site, placed, underfoot, said, plan_box=plan_box, units=units, scale=scale)
    strip = sheet_strip(
        plan_box,
        words_in_use({**_legend(paths, units), **finish_legend(finish)}, (*marks, *written.marks)),
        heading=(title, scenario.name),
        cautions=(*laid, *cautions),
        north_deg=site.place.plan_up_bearing_deg,
        units=units,
        scale=scale,
    )
    section = door_section(site, scenario.brief, layout, levels, units=units, scale=scale) if levels else None
    strip = with_inset(strip, section, scale)
    return Drawing(
        title=title,
        description=describe(scenario, layout),
        metric=units == "m",
        plan_box=plan_box,
        sheet_box=strip.sheet_box,
        marks=(*marks, *written.marks),
        key=strip.marks,
        texts=(*written.texts, *strip.texts),
        dimensions=written.dimensions,
        on_screen=written.on_screen,
    )


def _purposes(scenario: Scenario) -> dict[str, tuple[str, ...]]:
    return {wish.name: kept_for(wish) for wish in scenario.brief.rooms if wish.kind == "reserve"}


def _pointed(paths: Paths, site: Site, layout: Layout, scale: float) -> tuple[Area, ...]:
    return tuple(notable_marks(paths.notable, layout, paths.legs, site.doors, scale))


def _levels(site: Site, placed: Placed, ways: Sequence[Way]) -> Mapping[str, float]:
    """Levels of the paved rooms, where the ground is known."""
    return graded_levels(site, placed, ways) if ground_of(site).is_known else {}


def _laid_marks(placed: Placed, paths: Paths, planting: Planting, finish: FinishPlan, site: Site) -> tuple[Mark, ...]:
    """Ground, ways, landings and rooms, in the order in which they cover each other."""
    return (
        *ground_marks(site, planting, plan_box_of(site)),
        *paving_marks(site, placed.shapes),
        *areas_of("path", paths.area),
        *door_zone_marks(site),
        *floor_marks(placed),
        *finish_marks(finish),
        *capped(finish, fitting_marks(placed, told=told_rooms(paths.later))),
        *terrace_marks(placed),
    )


def _legend(paths: Paths, units: Units) -> dict[str, str]:
    return {**LEGEND_WORDS, **future_legend(paths.later, units)}


def _underfoot(
    site: Site, paths: Paths, planting: Planting, risers: Sequence[Line], water: Sequence[Mark], pointed: Sequence[Area]
) -> Underfoot:
    return Underfoot(
        paved=union_of(*door_zones(site), paths.area),
        beds=union_of(*(bed.outline for bed in planting.beds)),
        stepped=union_of(*door_zones(site), *(LineString(mark.points) for mark in risers)),
        banded=banded(paths.later),
        barred=union_of(*(_shape(mark) for mark in water)),
        marked=union_of(*(Polygon(ring) for mark in pointed for ring in mark.rings)),
    )


def _shape(mark: Mark) -> BaseGeometry:
    if isinstance(mark, Circle):
        return Point(mark.centre).buffer(mark.radius_ft)
    return LineString(mark.points) if isinstance(mark, Line) else Polygon(mark.rings[0])


def describe(scenario: Scenario, layout: Layout) -> str:
    """Put the plan in words, for who cannot see it: every room with its size, its area and where its middle lies."""
    units = scenario.units
    rooms = "; ".join(
        f"{p.title}, {size_text(p, units).replace('×', 'by')},"
        f" {area_text(p.area_sqft, units)}, middle {length_text(p.centre[0], units)} from the left"
        f" and {length_text(p.centre[1], units)} up"
        for p in layout.placements
    )
    return f"Concept plan of {scenario.name}. Rooms: {rooms or 'none'}."
