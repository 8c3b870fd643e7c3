"""What would help: changes of the yard that were tried, each with a button that makes it and searches."""

from collections.abc import Sequence

import streamlit as st

from optimizer.concepts import WayOut
from ui.components.decisions import reason_asked
from ui.components.markup import paragraph
from ui.components.wishes_form import saved_as, search_from
from ui.edits import patched
from ui.searches import Search
from ui.store import Revision


def ways_out(
    revision: Revision, ways: Sequence[WayOut], *, asked_of: int, seconds: float, start_from: Search | None = None
) -> None:
    """Show each with its button; `asked_of` is the version that they are changes of: to another they say nothing."""
    is_same = revision.id == asked_of
    if ways:
        paragraph("What would help. Each was tried, and a layout was found with it.")
    reason = reason_asked(f"way_out_{revision.id}") if ways and is_same else ""
    for number, way in enumerate(ways):
        with st.container(horizontal=True, vertical_alignment="center", key=f"way_out_{number}"):
            with st.container(width="content"):
                paragraph(way.text, css="lead")
            if is_same and st.button("Do that, and search", key=f"do_{number}"):
                _do(revision, way, reason, seconds, start_from)
    if ways and not is_same:
        paragraph("The yard was changed since then: ask again to do any of this.")


def _do(revision: Revision, way: WayOut, reason: str, seconds: float, start_from: Search | None) -> None:
    saved = saved_as(revision, patched(revision.text, way.patch), way.text, reason)
    search_from(saved, seconds, start_from)
