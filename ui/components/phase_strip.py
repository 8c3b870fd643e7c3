"""The phases of a concept as a strip of small plans, each with its money and what machines come in by."""

import streamlit as st

from optimizer.concepts.future_words import DIG_CAUTION
from ui.components.markup import Markup, element, image, paragraph, plain, show
from ui.components.pictures import DESIGNER, OWNER, phase_pictures, phases_of_concept
from ui.shown import Shown
from ui.state import is_for_designer
from ui.view_models import PhaseWords, phase_words_of


def phase_strip(shown: Shown) -> None:
    """Show what stands after each phase, from left to right; a press on a plan enlarges it."""
    phases = phases_of_concept(shown)
    if len(phases) < 2:
        return
    paragraph("What stands after each phase. Press a plan to enlarge it.")
    pictures = phase_pictures(shown, DESIGNER if is_for_designer() else OWNER)
    told = phase_words_of(shown.option, shown.scenario, for_designer=is_for_designer())
    for column, phase, words in zip(st.columns(len(phases)), phases, told, strict=True):
        small, whole = pictures[phase]
        with column, st.container(key=f"row_phase_{phase}", gap=None):
            show(_plan(small, words))
            if st.button(f"Enlarge the plan after phase {phase}", key=f"enlarge_phase_{phase}"):
                st.dialog(f"{plain(shown.option.title)} after phase {phase}", width="large")(_enlarged)(whole, words)
    if not shown.option.futures:  # else it stands above, with what may come later
        show(element("div", element("p", DIG_CAUTION), css="caution"))


def _plan(small: Markup, words: PhaseWords) -> Markup:
    lines = (element("p", line, css="quiet") for line in (words.money, words.adds, words.machines) if line)
    return element("div", small, element("strong", words.title), *lines, css="phase")


def _enlarged(svg: str, words: PhaseWords) -> None:
    show(element("div", image(svg, words=f"Plan of what stands after {words.title.lower()}"), css="plan whole"))
