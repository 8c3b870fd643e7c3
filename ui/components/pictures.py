"""Plans of a concept: the owner's, the designer's, a small one, one with numbers for phones; and the yard as it is."""

from collections.abc import Mapping
from typing import Final

import streamlit as st

from optimizer.appraisal import Outlook
from optimizer.catalogue import sized_rooms
from optimizer.concepts.phases import phases_of
from optimizer.concepts.words import choice_words
from optimizer.drawing import AUDIENCES, Audience, Drawing, draw_plan
from optimizer.drawing.concept_plan import draw_concept
from optimizer.drawing.future_plan import draw_future
from optimizer.drawing.over_plan import for_screen, numbered, plan_alone, with_area
from optimizer.drawing.phase_plans import phase_plans
from optimizer.export import plan_svg, strip_svg, thumbnail_svg
from optimizer.layout import Layout, placed_of
from optimizer.scenario import Scenario
from ui.components.markup import Markup, element, image
from ui.shown import Shown

OWNER, DESIGNER = AUDIENCES
AREA_WIDTH_PX: Final = 900
PHASE_WIDTH_PX: Final = 480


def large_plan(shown: Shown, audience: Audience) -> Markup:
    """Give the plan of a concept in the width there is; on a phone with numbers for rooms and a key to them."""
    words, places = _words(shown), shown.option.layout.placements
    svg = _screen_svg(shown.key, audience, shown)
    full = element("div", image(svg, words=words), css="plan")
    rooms = (element("li", place.room, element("small", f" {choice_words(place.choice)}")) for place in places)
    picture = image(_numbered_svg(shown.key, shown), words=f"{words}, by their numbers")
    return element("div", full, element("div", picture, element("ol", *rooms), css="numbered"), css="large-plan")


def plan_of(shown: Shown, audience: Audience) -> str:
    """Give the plan of a concept as SVG; the designer's as the command wrote it, where it did."""
    written = shown.search.plan_svg(shown.option.id) if audience == DESIGNER and not shown.search.is_running else None
    return written or _plan_svg(shown.key, audience, shown)


def phases_of_concept(shown: Shown) -> tuple[int, ...]:
    """Give the numbers of the phases that a concept is built in."""
    return tuple(phases_of(placed_of(sized_rooms(shown.scenario.brief), shown.option.layout)))


def phase_plans_of(shown: Shown, audience: Audience) -> dict[int, str]:
    """Give the plans of what stands after each phase of a concept as SVG, by the number of the phase."""
    plans = phase_plans(shown.scenario, shown.option, audience=audience)
    return {phase: plan_svg(plan) for phase, plan in plans.items()}


def phase_pictures(shown: Shown, audience: Audience) -> Mapping[int, tuple[Markup, str]]:
    """Give a small plan of what stands after each phase of a concept as a picture, and the reader's whole sheet."""
    return {
        phase: (image(small, words=f"{_words(shown)}, after phase {phase}"), whole)
        for phase, (small, whole) in _phase_svgs(shown.key, audience, shown).items()
    }


def phase_strip_of(shown: Shown, audience: Audience) -> str:
    """Give the plans after each phase side by side, as one SVG."""
    return strip_svg(tuple(phase_plans(shown.scenario, shown.option, audience=audience).values()))


def future_plan_of(shown: Shown, outlook: Outlook, audience: Audience, *, whole: bool) -> str:
    """Give the plan of what may come later as SVG: the whole sheet, or the plan alone with large names."""
    return _future_svg(f"{shown.key}/{outlook.room}/{outlook.future}", audience, whole, shown, outlook)


def small_picture(shown: Shown) -> Markup:
    """Give the small plan of a concept as a picture."""
    return image(_small_svg(shown.key, shown), words=_words(shown))


def area_picture(shown: Shown, area: tuple[float, float, float, float] | None) -> Markup:
    """Give the plan of a concept with a scale along its sides, and with an area over it."""
    svg = _area_svg(shown.key, area, shown)
    return element("div", image(svg, words=f"{_words(shown)}, with a scale along its sides"), css="plan")


def yard_picture(scenario: Scenario) -> Markup:
    """Give the yard as it was read, before anything is placed, as a picture."""
    return image(_yard_svg(scenario.digest, scenario), words=f"The yard of {scenario.name} as it is")


# Drawing takes a moment and the page is run at every press; `key` names `_shown` for the cache.
@st.cache_resource(max_entries=100, show_spinner=False)
def _drawn(key: str, audience: Audience, _shown: Shown) -> Drawing:
    """Draw a concept once for all the pictures that are made of it: small, large, with numbers, with an area."""
    del key
    return draw_concept(_shown.scenario, _shown.option, audience=audience)


@st.cache_data(max_entries=100, show_spinner="Drawing")
def _plan_svg(key: str, audience: Audience, _shown: Shown) -> str:
    return plan_svg(_drawn(key, audience, _shown))


@st.cache_data(max_entries=100, show_spinner="Drawing")
def _screen_svg(key: str, audience: Audience, _shown: Shown) -> str:
    drawing = _drawn(key, audience, _shown)
    return plan_svg(plan_alone(drawing) if audience == DESIGNER else for_screen(drawing))


@st.cache_data(max_entries=400, show_spinner=False)
def _small_svg(key: str, _shown: Shown) -> str:
    return thumbnail_svg(_drawn(key, OWNER, _shown))


@st.cache_data(max_entries=100, show_spinner=False)
def _numbered_svg(key: str, _shown: Shown) -> str:
    drawing = numbered(_drawn(key, OWNER, _shown), _shown.option.layout)
    return thumbnail_svg(drawing, width_px=AREA_WIDTH_PX)


@st.cache_data(max_entries=100, show_spinner=False)
def _area_svg(key: str, area: tuple[float, float, float, float] | None, _shown: Shown) -> str:
    drawing = with_area(_drawn(key, OWNER, _shown), area, unit_ft=_shown.scenario.unit_ft)
    return thumbnail_svg(drawing, width_px=AREA_WIDTH_PX)


@st.cache_data(max_entries=40, show_spinner="Drawing")
def _phase_svgs(key: str, audience: Audience, _shown: Shown) -> dict[int, tuple[str, str]]:
    del key
    clean = phase_plans(_shown.scenario, _shown.option, audience=OWNER)
    whole = clean if audience == OWNER else phase_plans(_shown.scenario, _shown.option, audience=audience)
    return {
        phase: (thumbnail_svg(clean[phase], width_px=PHASE_WIDTH_PX), plan_svg(plan)) for phase, plan in whole.items()
    }


@st.cache_data(max_entries=100, show_spinner="Drawing")
def _future_svg(key: str, audience: Audience, whole: bool, _shown: Shown, _outlook: Outlook) -> str:
    del key
    drawing = draw_future(_shown.scenario, _shown.option, _outlook, audience=audience)
    return plan_svg(drawing if whole else for_screen(drawing))


@st.cache_data(max_entries=40, show_spinner=False)
def _yard_svg(digest: str, _scenario: Scenario) -> str:
    del digest
    placed = placed_of(sized_rooms(_scenario.brief), Layout(()))
    return thumbnail_svg(draw_plan(_scenario, placed, (), title=_scenario.name, audience=OWNER))


def _words(shown: Shown) -> str:
    title = shown.option.title[0].lower() + shown.option.title[1:]
    return f"Plan of {title}: {', '.join(place.room for place in shown.option.layout.placements)}"
