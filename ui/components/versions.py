"""Versions of a yard: what was changed from one to the next, and where work went on in two ways."""

import streamlit as st

from ui.components.markup import paragraph, plain
from ui.components.scenario_choice import moment_words
from ui.state import go_on_with, store
from ui.store import Revision, ends


def versions(current: Revision) -> None:
    """Show all versions, newest first, each with a way to go to it."""
    all_of_them = store().revisions.of_yard(current.yard_id)
    last = {revision.id for revision in ends(all_of_them)}
    if len(last) > 1:
        paragraph(f"Work went on in {len(last)} ways. The last version of each is marked.", css="quiet")
    numbers = {revision.id: number for number, revision in enumerate(all_of_them, start=1)}
    with st.container(key="versions", gap=None):
        for revision in reversed(all_of_them):
            words = _words(revision, numbers, is_last=len(last) > 1 and revision.id in last)
            is_here = revision.id == current.id
            st.button(
                f"{words}{' (open)' if is_here else ''}",
                key=f"version_{revision.id}",
                on_click=go_on_with,
                args=(revision,),
                type="tertiary",
                disabled=is_here,
            )


def _words(revision: Revision, numbers: dict[int, int], *, is_last: bool) -> str:
    made = moment_words(revision.made_at)
    number = numbers[revision.id]
    source = (
        ""
        if revision.parent_id is None or numbers[revision.parent_id] == number - 1
        else f" from {numbers[revision.parent_id]}"
    )
    mark = ", last of its way" if is_last else ""
    return f"{number}{source}{mark}: {plain(revision.what)} ({made})"
