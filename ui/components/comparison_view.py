"""Two concepts side by side in the same picture: what differs, and what is the same."""

import streamlit as st

from optimizer.results.revision import revision_note
from ui.components.markup import Markup, element, paragraph, show
from ui.components.site_pictures import site_picture, view_choice
from ui.decided import decided_between
from ui.shown import Shown
from ui.state import is_for_designer
from ui.view_models import Card, Comparison, ComparisonRow, compare, listed


def comparison_view(first: Shown, second: Shown) -> None:
    """Show two concepts against each other."""
    told = compare(first.option, second.option, first.scenario, for_designer=is_for_designer())
    view = view_choice((first, second))
    for column, shown, card in zip(st.columns(2), (first, second), (told.first, told.second), strict=True):
        with column:
            site_picture(shown, view)
            show(_caption(card))
    st.subheader("What differs", anchor=False)
    show(_table(told))
    if told.moved:
        paragraph(f"Rooms that stand elsewhere: {listed(told.moved)}.", css="lead")
    st.download_button(
        "Revision note (text)",
        lambda: revision_note(first.scenario, first.option, second.option, decided_between(first, second)),
        "revision-note.txt",
        "text/plain",
        on_click="ignore",
        key="note",
    )
    if told.same:
        paragraph(f"The same in both: {listed([_said(row) for row in told.same])}.")


def _said(row: ComparisonRow) -> str:
    return f"{row.label.lower()} ({row.first})"


def _caption(card: Card) -> Markup:
    return element("p", element("strong", f"{card.title}, {card.cost}"), f" · {card.reason}", css="quiet")


def _table(shown: Comparison) -> Markup:
    titles = element("tr", element("td", ""), element("th", shown.first.title), element("th", shown.second.title))
    rows = (
        element("tr", element("th", row.label, scope="row"), element("td", row.first), element("td", row.second))
        for row in shown.differing
    )
    return element("table", element("thead", titles), element("tbody", *rows), css="sheet-table")
