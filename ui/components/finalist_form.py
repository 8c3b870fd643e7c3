"""Keeping a concept as a finalist, with a name and a note."""

from collections.abc import Sequence
from dataclasses import replace

import streamlit as st

from ui.components.decisions import reason_asked
from ui.components.markup import paragraph
from ui.shown import Shown
from ui.state import store, tell_once
from ui.store import Decision, Finalist
from ui.view_models import capital

_BESIDE = (
    "Somebody else, or another tab, changed this finalist at the same time. Both entries are kept, one below the other."
)


def finalist_form(shown: Shown, kept: Sequence[Finalist], yard_id: int) -> None:
    """Offer to keep the concept, or to change what is said of it."""
    known = next((each for each in kept if (each.search_id, each.concept) == (shown.search.id, shown.option.id)), None)
    usual = shown.option.idea.name if shown.option.idea else shown.option.title
    begun = known or Finalist(yard_id, shown.search.id, shown.option.id, capital(usual))
    key = f"{shown.name}_{begun.id}"
    with st.popover("Finalist" if known else "Keep as finalist", key=f"keep_{key}"):
        if shown.search.is_running:
            paragraph("It can be kept once the search has ended.")
            return
        # A form hands over what is typed with the press: a button beside the fields would save what they held before.
        with st.form(key=f"form_{key}", border=False):
            st.text_input("Name", begun.name, max_chars=100, key=f"name_{key}")
            st.text_area("Note", begun.note, max_chars=2000, key=f"note_{key}", height=90)
            st.checkbox("The one that the designer would build", begun.is_advised, key=f"advised_{key}")
            reason_asked(key)
            st.form_submit_button("Keep", key=f"save_{key}", on_click=_keep, args=(shown, begun, key), type="primary")
        if known is not None:
            dropped = replace(known, is_kept=False)
            st.button("No finalist any more", key=f"drop_{key}", on_click=_save, args=(shown, dropped, key))


def _keep(shown: Shown, begun: Finalist, key: str) -> None:
    """Save what the fields of the form say now."""
    name, note, is_advised = (st.session_state[f"{field}_{key}"] for field in ("name", "note", "advised"))
    _save(shown, replace(begun, name=name.strip() or begun.name, note=note.strip(), is_advised=is_advised), key)


def _save(shown: Shown, finalist: Finalist, key: str) -> None:
    """Save a finalist, and the decision that it is."""
    _, is_beside = store().finalists.save(finalist)
    reason = st.session_state.get(f"reason_{key}", "")
    store().decisions.add(Decision(finalist.yard_id, shown.search.record.revision_id, _what(shown, finalist), reason))
    if is_beside:
        tell_once(_BESIDE)


def _what(shown: Shown, finalist: Finalist) -> str:
    done = "No finalist any more" if not finalist.is_kept else "Chosen to build" if finalist.is_advised else "Finalist"
    return f"{done}: {finalist.name} ({shown.option.title})"
