"""A search that runs: its stage, its time, what it has found, and a way to end it with the best so far."""

import streamlit as st

from ui.components.markup import paragraph
from ui.jobs import Job
from ui.view_models import progress

_EVERY_S = 0.5


@st.fragment(run_every=_EVERY_S)
def search_progress(job: Job) -> None:
    """Show a running search, and draw the whole page anew once it has ended."""
    if not job.is_running:
        st.rerun()
    state = progress(tuple(job.events))
    st.subheader("Searching", anchor=False)
    st.progress(state.share(job.seconds))
    what = "layout" if job.kind == "budgets" else "concept"
    found = f"{state.found} {what}{'' if state.found == 1 else 's'} so far"
    best = f" · best so far {state.best}" if state.best else ""
    paragraph(f"{state.stage} · {state.elapsed_s:.0f} s of about {job.seconds:.0f} s · {found}{best}", css="lead")
    st.button("Stop and keep the best so far", on_click=job.stop, disabled=job.stop_asked, key="stop_search")
    if job.stop_asked:
        paragraph("Ending: the best so far is being written.")
