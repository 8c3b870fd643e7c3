"""Two concepts side by side: both plans, what differs, and what is the same."""

import streamlit as st

from optimizer.concepts import Option
from optimizer.results import Result
from ui.components.markup import Markup, element, paragraph, show
from ui.components.pictures import large_plan
from ui.jobs import Job
from ui.view_models import Card, Comparison, ComparisonRow, compare, listed


def comparison_view(job: Job, result: Result, first: Option, second: Option) -> None:
    """Show two concepts against each other."""
    shown = compare(first, second, result.scenario)
    for column, option, card in zip(st.columns(2), (first, second), (shown.first, shown.second), strict=True):
        with column:
            show(large_plan(job, option), _caption(card))
    st.subheader("What differs", anchor=False)
    show(_table(shown))
    if shown.moved:
        paragraph(f"Rooms that stand elsewhere: {listed(shown.moved)}.", css="lead")
    if shown.same:
        paragraph(f"The same in both: {listed([_said(row) for row in shown.same])}.")


def _said(row: ComparisonRow) -> str:
    return f"{row.label.lower()} ({row.first})"


def _caption(card: Card) -> Markup:
    return element("p", element("strong", card.title), f" · {card.reason}", css="quiet")


def _table(shown: Comparison) -> Markup:
    titles = element("tr", element("th", ""), element("th", shown.first.title), element("th", shown.second.title))
    rows = (
        element("tr", element("th", row.label, scope="row"), element("td", row.first), element("td", row.second))
        for row in shown.differing
    )
    return element("table", element("thead", titles), element("tbody", *rows), css="sheet-table")
