"""Decisions with their reasons: the field in which a person says why, and the dated list of them."""

from collections.abc import Sequence

import streamlit as st

from optimizer.results.decisions import DecisionRow, decisions_csv
from ui.components.markup import element, paragraph, show
from ui.store import LONGEST_REASON


def reason_asked(key: str) -> str:
    """Ask why something is decided; the answer may be empty."""
    return st.text_input(
        "Why (kept with the decision)", max_chars=LONGEST_REASON, key=f"reason_{key}", placeholder="Optional"
    ).strip()


def decision_list(rows: Sequence[DecisionRow]) -> None:
    """Show all decisions on a yard, the last first, and offer them as a table."""
    st.subheader("Decisions", anchor=False)
    if not rows:
        paragraph("None yet. What is held, changed, kept or chosen stands here, with its reason.")
        return
    heads = element("tr", *(element("th", name) for name in ("When", "What was decided", "Why")))
    lines = (
        element(
            "tr",
            element("td", row.when, element("small", f"version {row.version}"), css="when"),
            element("td", row.what),
            element("td", row.reason),
        )
        for row in reversed(rows)
    )
    show(element("table", element("thead", heads), element("tbody", *lines), css="sheet-table decided"))
    st.download_button(
        "Decisions (CSV)", decisions_csv(rows), "decisions.csv", "text/csv", on_click="ignore", key="decisions_csv"
    )
