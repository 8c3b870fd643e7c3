"""Ground that is held for later: each future in turn on the plan, with its way in, what misses, and money."""

from collections.abc import Mapping

import streamlit as st

from optimizer.appraisal import Outlook
from optimizer.concepts.future_words import futures_by_name
from ui.components.markup import element, figure_list, image, paragraph, plain, show
from ui.components.pictures import DESIGNER, OWNER, future_plan_of
from ui.shown import Shown
from ui.state import current_future, is_for_designer, look_at_future
from ui.view_models import LaterWords, capital, later_words


def held_ground(shown: Shown) -> None:
    """Show what may come later in a concept, one future at a time; nothing where no ground is held."""
    futures = futures_by_name(shown.option)
    if not futures:
        return
    outlook = futures[_chosen(futures)]
    told = later_words(outlook, shown.scenario, for_designer=is_for_designer())
    # The picture first: on a phone the words come below it.
    picture, words = st.columns([9, 7], gap="large")
    with picture:
        _picture(shown, outlook, told)
    with words:
        _told(told)


def _chosen(futures: Mapping[str, Outlook]) -> str:
    """Let one future be chosen, at first the first."""
    named = current_future()
    st.session_state["future"] = named if named in futures else next(iter(futures))
    chosen = st.segmented_control(
        "What may come later",
        [*futures],
        format_func=lambda name: plain(capital(name)),
        key="future",
        required=True,
        on_change=lambda: look_at_future(st.session_state["future"]),
        label_visibility="collapsed",
    )
    return str(chosen)


def _picture(shown: Shown, outlook: Outlook, told: LaterWords) -> None:
    audience = DESIGNER if is_for_designer() else OWNER
    svg = future_plan_of(shown, outlook, audience, whole=False)
    show(element("div", image(svg, words=f"Plan: {told.standing}"), css="plan"))
    paragraph(told.shows)
    if st.button("Enlarge", key="enlarge_future"):
        st.dialog(plain(told.standing), width="large")(_enlarged)(future_plan_of(shown, outlook, audience, whole=True))


def _enlarged(svg: str) -> None:
    show(element("div", image(svg, words="The same plan with its legend"), css="plan whole"))


def _told(told: LaterWords) -> None:
    paragraph(told.standing, css="lead")
    if told.money:
        show(figure_list(told.money))
    paragraph(told.pays)
    show(element("div", *(element("p", words) for words in told.told), css="caution"))
