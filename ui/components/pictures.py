"""Pictures of a concept: the designer's sheet as the command wrote it, the owner's, and a small plan."""

from collections.abc import Sequence

import streamlit as st

from optimizer.catalogue import sized_rooms
from optimizer.circulation import Leg, way_polygon
from optimizer.concepts import Option, about_words
from optimizer.drawing import Paths, draw_plan
from optimizer.export import plan_svg, thumbnail_svg
from optimizer.layout import Layout, placed_of
from optimizer.scenario import Scenario
from ui.components.markup import Markup, element, image
from ui.jobs import Job


def large_plan(job: Job, option: Option) -> Markup:
    """Give the designer's plan of a concept in the width there is, or say that it is not there."""
    svg = job.plan_svg(option.id)
    if svg is None:
        return element("p", "The plan of this concept is not there; search again to draw it.", css="quiet")
    return element("div", image(svg, words=_words(option)), css="plan")


def owner_plan(job: Job, scenario: Scenario, option: Option) -> Markup:
    """Give the owner's plan of a concept in the width there is."""
    return element("div", image(owner_svg(job, scenario, option), words=_words(option)), css="plan")


def owner_svg(job: Job, scenario: Scenario, option: Option) -> str:
    """Give the owner's plan of a concept: no dimensions, levels and working marks."""
    return _owner_svg(f"{job.id}/{option.id}", scenario, option)


def small_picture(scenario: Scenario, option: Option, job: Job) -> Markup:
    """Give the small plan of a concept as a picture."""
    return image(_concept_svg(f"{job.id}/{option.id}", scenario, option), words=_words(option))


def yard_picture(scenario: Scenario) -> Markup:
    """Give the yard as it was read, before anything is placed, as a picture."""
    return image(_yard_svg(scenario.digest, scenario), words=f"The yard of {scenario.name} as it is")


# Drawing takes a moment and the page is run at every press; the first argument names the others for the cache.
@st.cache_data(max_entries=100, show_spinner="Drawing")
def _owner_svg(key: str, _scenario: Scenario, _option: Option) -> str:
    del key
    appraisal, placed = _option.appraisal, placed_of(sized_rooms(_scenario.brief), _option.layout)
    paths = Paths(way_polygon(_scenario.site, placed, appraisal.legs), appraisal.legs)
    title = f"{_option.title}: {_option.idea.name if _option.idea else 'plan'}"
    cautions = (about_words(appraisal.cost, _scenario.currency), *_option.cautions)
    drawing = draw_plan(
        _scenario, placed, appraisal.ways, title=title, paths=paths, cautions=cautions, audience="owner"
    )
    return plan_svg(drawing)


@st.cache_data(max_entries=400, show_spinner=False)
def _concept_svg(key: str, _scenario: Scenario, _option: Option) -> str:
    del key
    return _small(_scenario, _option.layout, _option.appraisal.legs, title=_option.title)


@st.cache_data(max_entries=40, show_spinner=False)
def _yard_svg(digest: str, _scenario: Scenario) -> str:
    del digest
    return _small(_scenario, Layout(()), (), title=_scenario.name)


def _small(scenario: Scenario, layout: Layout, legs: Sequence[Leg], *, title: str) -> str:
    placed = placed_of(sized_rooms(scenario.brief), layout)
    paths = Paths(way_polygon(scenario.site, placed, legs), tuple(legs)) if legs else None
    return thumbnail_svg(draw_plan(scenario, placed, (), title=title, paths=paths, audience="owner"))


def _words(option: Option) -> str:
    title = option.title[0].lower() + option.title[1:]
    return f"Plan of {title}: {', '.join(place.room for place in option.layout.placements)}"
