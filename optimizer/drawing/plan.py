"""The plan of one layout, drawn once for every writer."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from shapely import Polygon
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
from optimizer.drawing.future_marks import future_legend, future_marks
from optimizer.drawing.heights import graded_levels
from optimizer.drawing.marks import Area, Box, Drawing, Mark
from optimizer.drawing.notable_marks import Notable, notable_marks
from optimizer.drawing.opening_marks import door_zone_marks, door_zones
from optimizer.drawing.outlines import areas_of
from optimizer.drawing.paving_marks import paving_marks
from optimizer.drawing.pool_marks import pool_marks
from optimizer.drawing.room_marks import fitting_marks, floor_marks
from optimizer.drawing.sheet import LEGEND_WORDS, sheet_strip, with_inset, words_in_use
from optimizer.drawing.site_marks import ground_marks, standing_marks
from optimizer.drawing.terrace_marks import terrace_marks
from optimizer.drawing.words import Units, area_text, kept_for, length_text, size_text
from optimizer.fields import ground_of
from optimizer.layout import Layout, Placed
from optimizer.planting import Planting, planting_of
from optimizer.scenario import Scenario
from optimizer.site import Site

MARGIN_FT = 8.0
NEIGHBOUR_MARGIN_FT = 18.0
USUAL_YARD_FT = 115.0
"""Yard for which the text sizes are chosen: its sheet still fits 11 x 17 in when shrunk by a quarter."""
TEXT_SCALES = (0.8, 2.0)


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
    levels = _levels(site, placed, ways) if audience == "designer" else {}
    pointed = tuple(notable_marks(paths.notable, layout, paths.legs, scale)) if audience == "designer" else ()
    standing = (*(flight_marks(site, placed, ways) if ways else ()), *standing_marks(site))
    drawn = (
        *_laid_marks(placed, paths, planting, finish, site),
        *standing,
        *extra_marks(scenario, placed),
        *pool_marks(site, placed.once, paths.area),
        *future_marks(paths.later),
    )
    marks = (*shown_to(audience, drawn), *pointed)
    laid = finish_take_off(finish, placed)
    underfoot = _underfoot(site, paths, planting, pointed)
    said = Said(
        {wish.name: kept_for(wish) for wish in scenario.brief.rooms if wish.kind == "reserve"}, levels, audience
    )
    written = annotate(site, placed, underfoot, said, plan_box=plan_box, units=units, scale=scale)
    strip = sheet_strip(
        plan_box,
        words_in_use({**_legend(paths, units), **finish_legend(finish)}, (*marks, *written.marks)),
        heading=(title, scenario.name),
        cautions=(*(finish_words(finish, laid, scenario.brief, units) if audience == "designer" else ()), *cautions),
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
    )


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
        *capped(finish, fitting_marks(placed)),
        *terrace_marks(placed),
    )


def _legend(paths: Paths, units: Units) -> dict[str, str]:
    return {**LEGEND_WORDS, **future_legend(paths.later, units)}


def _underfoot(site: Site, paths: Paths, planting: Planting, pointed: Sequence[Area]) -> Underfoot:
    return Underfoot(
        paved=union_of(*door_zones(site), paths.area),
        beds=union_of(*(bed.outline for bed in planting.beds)),
        marked=union_of(*(Polygon(ring) for mark in pointed for ring in mark.rings)),
    )


@lru_cache(maxsize=8)
def plan_box_of(site: Site) -> Box:
    """Bounds of the yard and its buildings with a margin, wider where a neighbour stands close by [ft]."""
    yard = union_of(Polygon(site.boundary), *(Polygon(building.outline) for building in site.buildings)).envelope
    close = yard.buffer(NEIGHBOUR_MARGIN_FT, join_style="mitre")
    neighbours = [Polygon(thing.outline).intersection(close) for thing in site.surroundings if thing.outline]
    x1, y1, x2, y2 = union_of(yard.buffer(MARGIN_FT, join_style="mitre"), *neighbours).bounds
    return (x1, y1, x2, y2)


def text_scale(site: Site) -> float:
    """How much larger than usual texts are, so that a large yard shrunk onto a page stays legible."""
    x1, y1, x2, y2 = plan_box_of(site)
    longest = max(x2 - x1, y2 - y1) - 2 * MARGIN_FT
    return min(max(longest / USUAL_YARD_FT, TEXT_SCALES[0]), TEXT_SCALES[1])


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
