"""The concepts in order: a small plan, what it costs and gives, what it leaves out, and why it stands where it does."""

import streamlit as st

from optimizer.results import Result
from ui.components.markup import Markup, element, paragraph, show
from ui.components.pictures import small_picture
from ui.jobs import Job
from ui.state import open_concept
from ui.view_models import Card, card, listed, words_of


def concept_list(job: Job, result: Result, opened_id: str) -> None:
    """Show all concepts, best first, the opened one marked; a press anywhere on a row opens it."""
    st.subheader("Concepts in order", anchor=False)
    paragraph("Prices are of phase 1, contingency included.")
    words = words_of(result.scenario)
    with st.container(key="concept_rows", gap=None):
        for option in result.option_set.concepts:
            picture = small_picture(result.scenario, option, job)
            _row(card(option, words), picture, is_open=option.id == opened_id)
    if result.option_set.sketches:
        st.subheader("Layouts of your own", anchor=False)
        with st.container(key="sketch_rows", gap=None):
            for option in result.option_set.sketches:
                picture = small_picture(result.scenario, option, job)
                _row(card(option, words), picture, is_open=option.id == opened_id)


def _row(shown: Card, picture: Markup, *, is_open: bool) -> None:
    with st.container(key=f"row_{'open_' if is_open else ''}{shown.key}", gap=None):
        show(_line(shown, picture))
        st.button(f"Open {shown.title}", key=f"open_{shown.key}", on_click=open_concept, args=(shown.id,))


def _line(shown: Card, picture: Markup) -> Markup:
    head = element("div", element("span", shown.title), element("span", shown.cost, css="cost"), css="head")
    idea = (element("p", shown.idea, css="idea"),) if shown.idea else ()
    facts = element("p", f"{shown.seats} seats · {shown.walking} walking · worth {shown.worth}", css="quiet")
    without = (element("p", f"Without {listed(shown.left_out)}", css="without"),) if shown.left_out else ()
    broken = (element("ul", *(element("li", words) for words in shown.broken)),) if shown.broken else ()
    body = element("div", head, *idea, facts, *without, element("p", shown.reason), *broken)
    return element("div", picture, body, css="line")
