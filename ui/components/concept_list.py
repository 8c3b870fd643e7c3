"""The concepts in order, and the finalists: a small plan, what it costs and gives, what it leaves out, and why."""

from collections.abc import Sequence

import streamlit as st

from ui.components.markup import Markup, element, plain, show
from ui.components.pictures import small_picture
from ui.shown import Shown, name_of, shown_by
from ui.state import is_for_designer, list_finalists, lists_finalists, open_concept, searching
from ui.store import Finalist
from ui.view_models import Card, card, listed, words_of

ALL, FINALISTS = "All concepts", "Finalists"


def concept_list(
    concepts: Sequence[Shown], kept: Sequence[Finalist], opened: Shown | None, said: Sequence[str] = ()
) -> None:
    """Show all concepts, best first, or the finalists; the opened one is marked, a press on a row opens it.

    `said` stands above the concepts.
    """
    if kept:
        st.session_state["list"] = FINALISTS if lists_finalists() else ALL
        names = {ALL: ALL, FINALISTS: f"{FINALISTS} ({len(kept)})"}
        st.segmented_control(
            "List",
            [*names],
            format_func=names.__getitem__,
            key="list",
            required=True,
            on_change=lambda: list_finalists(wanted=st.session_state["list"] == FINALISTS),
            label_visibility="collapsed",
        )
    if kept and lists_finalists():
        _finalists(kept, opened)
    else:
        _concepts(concepts, kept, opened, said)


def _concepts(concepts: Sequence[Shown], kept: Sequence[Finalist], opened: Shown | None, said: Sequence[str]) -> None:
    st.subheader("Concepts in order", anchor=False)
    words = words_of(concepts[0].scenario, for_designer=is_for_designer())
    prices = words.signed("Prices are of phase 1, contingency included.")
    show(element("div", *(element("p", line) for line in (*said, prices)), css="quiet list-head"))
    names = {(finalist.search_id, finalist.concept): finalist.name for finalist in kept}
    with st.container(key="concept_rows", gap=None):
        for shown in concepts:
            if shown.option.sketch is None:
                _row(shown, names.get((shown.search.id, shown.option.id), ""), opened)
    if any(shown.option.sketch is not None for shown in concepts):
        st.subheader("Layouts of your own", anchor=False)
        with st.container(key="sketch_rows", gap=None):
            for shown in concepts:
                if shown.option.sketch is not None:
                    _row(shown, names.get((shown.search.id, shown.option.id), ""), opened)


def _finalists(kept: Sequence[Finalist], opened: Shown | None) -> None:
    st.subheader("Finalists", anchor=False)
    with st.container(key="concept_rows", gap=None):
        for number, finalist in enumerate(kept):
            shown = shown_by(name_of(finalist.search_id, finalist.concept), searching())
            if shown is not None:
                _row(shown, finalist.name, opened, note=_note(finalist), key=f"finalist_{number}")


def _note(finalist: Finalist) -> str:
    advised = "The one that the designer would build. " if finalist.is_advised else ""
    return f"{advised}{finalist.note}".strip()


def _row(shown: Shown, name: str, opened: Shown | None, *, note: str | None = None, key: str = "") -> None:
    line = card(shown.option, shown.scenario, words_of(shown.scenario, for_designer=is_for_designer()))
    is_open = opened is not None and opened.name == shown.name
    key = key or line.key
    with st.container(key=f"row_{'open_' if is_open else ''}{key}", gap=None):
        show(_line(line, small_picture(shown), name=name, note=note))
        label = f"Open {plain(line.title)}" if note is None else f"Open finalist {plain(line.title)}"
        st.button(label, key=f"open_{key}", on_click=open_concept, args=(shown.name,))


def _line(shown: Card, picture: Markup, *, name: str, note: str | None) -> Markup:
    head = element("div", element("span", shown.title), element("span", shown.cost, css="cost"), css="head")
    kept = (element("p", name, css="kept-name"),) if name else ()
    idea = (element("p", shown.idea, css="idea"),) if shown.idea and shown.idea != name else ()
    figures = (f"{shown.seats} seats", shown.walking_words, shown.worth_words)
    facts = element("p", " · ".join(filter(None, figures)), css="quiet")
    without = (element("p", f"Without {listed(shown.left_out)}", css="without"),) if shown.left_out else ()
    reason = element("p", shown.reason if note is None else note, css="reason")
    return element("div", picture, element("div", head, *kept, *idea, facts, *without, reason), css="line")
