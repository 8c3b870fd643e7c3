"""Choose: concepts as they are found, one of them in full or two side by side, and finalists."""

from collections.abc import Sequence
from dataclasses import replace
from zlib import crc32

import streamlit as st

from optimizer.concepts import Conflict
from optimizer.errors import InputError
from optimizer.results import Result
from ui.components import (
    comparison_view,
    concept_list,
    concept_sheet,
    element,
    finalist_form,
    paragraph,
    plain,
    problem_list,
    search_progress,
    show,
)
from ui.components.search_start import USUAL_S
from ui.components.ways_out import ways_out
from ui.components.wishes_form import search_from
from ui.searches import Search
from ui.shown import Shown, concepts_of, follow, name_of, shown_by
from ui.state import (
    close_concept,
    concept_beside,
    current_search,
    hold_from,
    is_for_designer,
    lists_finalists,
    open_concept,
    opened_concept,
    opened_layout,
    put_beside,
    remember_layout,
    searching,
    store,
)
from ui.store import Finalist, Revision
from ui.view_models import Words, ending, listed, sentence, words_of


def choose(revision: Revision) -> None:
    """Show the concepts of the search at hand, in the state that it is in."""
    search = current_search(revision)
    if search is None:
        for line in _version(revision):
            paragraph(line)
        paragraph("Nothing was searched for yet in this yard.", css="lead")
        if st.button("Find concepts", type="primary", key="find"):
            search_from(revision, USUAL_S, None)
        return
    try:
        # Before what is shown: what comes meanwhile is then seen as new.
        data = search.document() if search.is_running else None
        concepts, result = concepts_of(search), search.result()
    except InputError as error:
        st.error("The result of this search cannot be read.")
        problem_list(error)
        return
    if search.is_running:
        search_progress(search.id, crc32(data or b""))
    elif result is None:
        _no_result(revision, search)
        return
    else:
        _ended(revision, search, result)
    if concepts:
        how = () if result is None or search.is_running else (ending(result.option_set),)
        _concepts(revision, concepts, (*how, *_version(revision)))


def _version(revision: Revision) -> tuple[str, ...]:
    """What this version of the yard changed; nothing for the first."""
    return () if revision.parent_id is None else (f"In this version of the yard: {sentence(revision.what)}",)


def _no_result(revision: Revision, search: Search) -> None:
    st.error("The search ended without a result. What it said:")
    problem_list(search.said)
    _again(revision, search)


def _again(revision: Revision, search: Search) -> None:
    if st.button("Search again", key="search_again", type="primary"):
        search_from(revision, search.seconds or USUAL_S, search if search.document() else None)


def _ended(revision: Revision, search: Search, result: Result) -> None:
    """Say how the search ended, and offer what would help."""
    if search.was_cut_off:
        st.warning("The search was ended from outside before its time. The best so far is kept.")
        _again(revision, search)
    if search.record.revision_id != revision.id:
        with st.container(horizontal=True, vertical_alignment="center", key="older"):
            paragraph("These concepts were found before your last changes.", css="quiet")
            if st.button("Search on with the changes", key="search_on"):
                search_from(revision, search.seconds or USUAL_S, search)
    if not result.option_set.options:
        st.subheader("No concept", anchor=False)
        paragraph(ending(result.option_set), css="lead")
    if result.option_set.conflict is not None:
        _conflict(
            revision, search, result.option_set.conflict, words_of(result.scenario, for_designer=is_for_designer())
        )
    elif not result.option_set.options:
        _again(revision, search)


def _conflict(revision: Revision, search: Search, conflict: Conflict, words: Words) -> None:
    paragraph(words.signed(conflict.words), css="lead")
    rules = (element("li", rule, f" For {listed(rooms)}." if rooms else "") for _, rule, rooms in conflict.rules)
    show(element("ul", *rules))
    ways = [replace(way, text=sentence(words.signed(way.text))) for way in conflict.ways_out]
    ways_out(revision, ways, asked_of=search.record.revision_id, seconds=search.seconds or USUAL_S)


def _concepts(revision: Revision, concepts: Sequence[Shown], said: Sequence[str]) -> None:
    """Show the list, with what is said of the search above it, and one concept beside it."""
    kept = store().finalists.of_yard(revision.yard_id)
    opened = _followed(concepts)
    shown = opened or _first(concepts, kept)
    list_side, sheet_side = st.columns([5, 11], gap="large")
    # The sheet first: the small plans of the list take a moment to draw.
    with sheet_side, st.container(key="concept_sheet_front" if opened else "concept_sheet_behind"):
        _opened(revision, shown, concepts, kept)
    with list_side, st.container(key="concept_list_behind" if opened else "concept_list_front"):
        concept_list(concepts, kept, shown, said)


def _followed(concepts: Sequence[Shown]) -> Shown | None:
    """The opened concept; where its search has gone on and its name has passed to another, what has become of it."""
    opened, known = shown_by(opened_concept(), searching()), opened_layout()
    if known is not None and (opened is None or opened.option.layout.base != known.base):
        opened = follow(known, concepts)
        if opened is None:
            close_concept()
            st.info("The concept that was open has given way to a better one.")
        else:
            open_concept(opened.name)
    if opened is not None:
        remember_layout(opened.option.layout)
    return opened


def _first(concepts: Sequence[Shown], kept: Sequence[Finalist]) -> Shown:
    """The concept that is shown before one is opened: the first of the list."""
    first = kept[0] if kept and lists_finalists() else None
    known = None if first is None else shown_by(name_of(first.search_id, first.concept), searching())
    return known or concepts[0]


def _opened(revision: Revision, shown: Shown, concepts: Sequence[Shown], kept: Sequence[Finalist]) -> None:
    with st.container(key="way_back"):
        st.button("All concepts", on_click=close_concept, key="all_concepts")
    beside = _head(revision, shown, concepts, kept)
    if beside is None:
        concept_sheet(shown)
    else:
        comparison_view(shown, beside)


def _head(revision: Revision, shown: Shown, concepts: Sequence[Shown], kept: Sequence[Finalist]) -> Shown | None:
    """Show title and price with what can be done, and return the concept that is put beside it."""
    words = words_of(shown.scenario)
    with st.container(
        key="sheet_head", horizontal=True, vertical_alignment="center", horizontal_alignment="distribute"
    ):
        with st.container(horizontal=True, vertical_alignment="center", width="content", key="sheet_title"):
            st.header(plain(shown.option.title), anchor=False, width="content")
            show(element("span", words.money(shown.option.appraisal.cost.phase(1)), css="price"))
        with st.container(horizontal=True, vertical_alignment="center", width="content", key="sheet_acts"):
            beside = _beside(shown, concepts, kept)
            finalist_form(shown, kept, revision.yard_id)
            st.button("Hold here", key="to_hold", on_click=hold_from, args=(shown.name,))
    return beside


def _beside(shown: Shown, concepts: Sequence[Shown], kept: Sequence[Finalist]) -> Shown | None:
    """Let another concept, or a finalist of another search, be put beside."""
    titles = {each.name: each.option.title for each in concepts}
    for finalist in kept:
        name = name_of(finalist.search_id, finalist.concept)
        titles[name] = f"{finalist.name} ({titles.get(name, 'found earlier')})"
    titles.pop(shown.name, None)
    if not titles:
        return None
    current = concept_beside()
    key = f"beside_{shown.name}"
    if key not in st.session_state:
        st.session_state[key] = current if current in titles else None
    chosen = st.selectbox(
        "Compare with",
        [*titles],
        format_func=titles.__getitem__,
        placeholder="Compare with",
        key=key,
        width=200,
        label_visibility="collapsed",
    )
    put_beside(chosen)
    return shown_by(chosen, searching())
