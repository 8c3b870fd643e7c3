"""The opened concept as a sheet: its plan and its verdict in one window, and below them one part of the rest."""

from typing import Final

import streamlit as st

from ui.components.concept_parts import concept_parts
from ui.components.markup import Markup, element, paragraph, plain, show
from ui.components.site_pictures import enlarge, site_picture, view_choice
from ui.shown import Shown
from ui.state import ask_why, is_for_designer
from ui.view_models import Deciding, Sheet, sheet

_BESIDE_WORDS: Final = {"Plan", "Ground", "Sun", "Sight"}
"""Pictures that leave room for words beside them; the others are wide."""


def concept_sheet(shown: Shown) -> None:
    """Show one concept: what decides in one window, all else in parts below, one at a time."""
    told = sheet(shown.option, shown.scenario, for_designer=is_for_designer())
    with st.container(horizontal=True, vertical_alignment="bottom", key="picture_row"):
        view = view_choice((shown,))
        is_larger = view.picture != "3-D" and st.button("Enlarge", key="enlarge")
    if is_larger:
        enlarge(shown, view)
    with st.container(key="plan_and_verdict"):
        is_narrow = view.picture in _BESIDE_WORDS
        picture, verdict = st.columns([7, 5]) if is_narrow else (st.container(), st.container())
    with picture:
        site_picture(shown, view)
    with verdict, st.container(key="verdict", gap=None):
        _verdict(told, shown)
    concept_parts(told, shown)


def _verdict(told: Sheet, shown: Shown) -> None:
    """Show whether it holds, the figures that decide, and for what is left out a way to ask why."""
    is_kept = all(check.is_kept for check in told.checks)
    show(element("p", told.verdict, css="verdict" if is_kept else "verdict unkept"))
    paragraph(told.card.reason, css="lead")
    show(_deciding(told.deciding))
    for number, figure in enumerate(told.left_out):
        label = f"Ask why the {plain(figure.label)} is left out"
        st.button(label, key=f"ask_why_{number}", on_click=ask_why, args=(shown.name, figure.label), type="tertiary")


def _deciding(figures: tuple[Deciding, ...]) -> Markup:
    rows = (
        element(
            "div",
            element("dt", each.label),
            element("dd", element("b", each.value), *_grade(each), element("small", each.why)),
        )
        for each in figures
    )
    return element("dl", *rows, css="deciding")


def _grade(figure: Deciding) -> tuple[Markup, ...]:
    return (element("span", figure.grade, css=f"grade {figure.grade}"),) if figure.grade else ()
