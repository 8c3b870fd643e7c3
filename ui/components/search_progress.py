"""A search that runs: its stage, its time, what it has found, and a way to end it with the best so far."""

from typing import Final
from zlib import crc32

import streamlit as st

from ui.components.markup import paragraph
from ui.searches import Search
from ui.state import searching
from ui.view_models import Progress, progress

_EVERY_S: Final = 0.5
_STOPS: Final = {"why": "Stop asking", "improve": "Stop looking"}
"""What stops a call that finds no concepts on its way."""


@st.fragment(run_every=_EVERY_S)
def search_progress(search_id: str, seen: int) -> None:
    """Show a running search, and draw the whole page anew once it has more to show, or has ended.

    `seen`: checksum of the best so far that the page shows; another one is other concepts.
    """
    search = searching().get(search_id)
    if search is None or not search.is_running or crc32(search.document() or b"") != seen:
        st.rerun()
    else:
        _shown(search)


def _shown(search: Search) -> None:
    state = progress(search.events)
    found = "" if search.kind in _STOPS else f" · {_found(search, state)}"
    doing = "Asking" if search.kind == "why" else "Searching"
    with st.container(key="searching"):
        st.progress(state.share(search.seconds))
        with st.container(horizontal=True, vertical_alignment="center", horizontal_alignment="distribute"):
            time = f"{state.elapsed_s:.0f} s of about {search.seconds:.0f} s"
            with st.container(width="content"):
                paragraph(f"{doing} · {state.stage} · {time}{found}", css="searching")
            if search.job is not None:
                label = _STOPS.get(search.kind, "Stop and keep the best so far")
                st.button(label, on_click=search.stop, disabled=search.stop_asked, key="stop_search")
    if search.stop_asked:
        paragraph("Ending: what is known so far is being written.")


def _found(search: Search, state: Progress) -> str:
    what = "layout" if search.kind == "budgets" else "concept"
    best = f" · best so far {state.best}" if state.best else ""
    return f"{state.found} {what}{'' if state.found == 1 else 's'} so far{best}"
