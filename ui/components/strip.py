"""The strip on top: the yard's name and its all-in limit, the steps, and for whom the page speaks."""

from typing import Final

import streamlit as st

from optimizer.scenario import Scenario
from ui.components.markup import element, show
from ui.state import STEPS, Step, current_step, go_to, is_for_designer, put_away, speak_to_designer
from ui.view_models import capital, words_of

STEP_NAMES: Final[dict[Step, str]] = {
    "yard": "Your yard",
    "budgets": "What each budget buys",
    "choose": "Choose",
    "hold": "Hold here",
    "handover": "Hand over",
}


def strip(scenario: Scenario) -> None:
    """Show the strip of a yard: name and limit, and below them the steps."""
    with st.container(key="strip"):
        _name(scenario)
    with st.container(horizontal=True, vertical_alignment="center", horizontal_alignment="distribute", key="steps"):
        st.session_state["step"] = current_step()
        st.segmented_control(
            "Step",
            STEPS,
            format_func=STEP_NAMES.__getitem__,
            key="step",
            required=True,
            on_change=_go,
            label_visibility="collapsed",
            wrap=True,
        )
        with st.container(horizontal=True, vertical_alignment="center", width="content", key="strip_side"):
            st.session_state["for_designer"] = is_for_designer()
            st.toggle("For a designer", key="for_designer", on_change=_speak)
            st.button("Other yards", on_click=put_away, key="another", type="tertiary")


def _name(scenario: Scenario) -> None:
    words = words_of(scenario, for_designer=is_for_designer())
    ceiling = scenario.brief.budget.ceiling
    term = words.term("ceiling")
    limit = f"No {term}" if ceiling is None else f"{capital(term)} {words.money(ceiling)}"
    show(element("div", element("h1", scenario.name), element("span", limit, css="limit"), css="yard-name"))


def _go() -> None:
    go_to(st.session_state["step"])


def _speak() -> None:
    speak_to_designer(wanted=st.session_state["for_designer"])
