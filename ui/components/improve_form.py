"""A layout of one's own that breaks rules: what it breaks, and the nearest layout that keeps them, on demand."""

import streamlit as st

from ui.components.markup import element, image, paragraph, plain, problem_list, show
from ui.components.search_progress import search_progress
from ui.components.search_start import USUAL_S, begin_search
from ui.components.ways_out import ways_out
from ui.searches import Search
from ui.shown import Shown
from ui.state import improvement_of, is_for_designer, searching
from ui.store import Revision
from ui.view_models import improved_told, sentence, words_of


def improve_form(revision: Revision, shown: Shown) -> None:
    """Show what a sketch breaks, and let it be improved; nothing for a layout that breaks nothing."""
    sketch, findings = shown.option.sketch, shown.option.findings
    if sketch is None or not findings:
        return
    st.subheader(f"What {plain(sketch)} breaks", anchor=False)
    words = words_of(shown.scenario, for_designer=is_for_designer())
    show(element("ul", *(element("li", sentence(words.signed(each.words))) for each in findings), css="rules-why"))
    found = improvement_of(revision)
    if found is not None and found.is_running:
        search_progress(found.id, 0)
        return
    if st.button("Find the nearest layout that keeps the rules", type="primary", key="improve"):
        begin_search(lambda: searching().improve(revision, sketch, shown.search, seconds=USUAL_S), lambda _: None)
    if found is not None:
        _found(revision, found, shown)


def _found(revision: Revision, found: Search, shown: Shown) -> None:
    document = found.document()
    if document is None:
        st.error("Nothing came of it. What was said:")
        problem_list(found.said)
        return
    told = improved_told(document, words_of(shown.scenario, for_designer=is_for_designer()))
    if told.sketch != shown.option.sketch:
        return
    paragraph(told.answer, css="lead")
    show(element("ul", *(element("li", change) for change in told.changes), css="rules-why"))
    if told.changes:
        paragraph(told.measure)
    drawn = None if told.plan is None else found.file(told.plan)
    if drawn is not None:
        show(element("div", image(drawn.decode(), words="Plan of the nearest layout"), css="plan"))
    earlier = searching().get(found.record.start_from)
    ways_out(revision, told.ways_out, asked_of=found.record.revision_id, seconds=USUAL_S, start_from=earlier)
