"""From a scenario to its concepts: choose, wait, look, compare."""

from pathlib import Path
from typing import Final

import streamlit as st

from optimizer.concepts import Conflict, Option
from optimizer.errors import InputError
from optimizer.results import Result, read_result
from ui.components import (
    budget_view,
    comparison_view,
    concept_list,
    concept_sheet,
    element,
    paragraph,
    problem_list,
    scenario_choice,
    search_progress,
    show,
)
from ui.jobs import Job
from ui.state import (
    close_concept,
    concept_beside,
    current_job,
    names_lost_job,
    opened_concept,
    put_away,
    put_beside,
    show_budgets,
    shows_budgets,
)
from ui.view_models import CAUTION, Words, ending, listed, sentence, words_of

_CONCEPTS: Final = "Concepts"
_BUDGETS: Final = "What each budget buys"


def concepts_page() -> None:
    """Show the page, in the state that its search is in."""
    job = current_job()
    _head(job)
    if names_lost_job():
        st.warning("This search is no longer kept. Search again with the same yard to bring it back.")
    if job is None:
        scenario_choice()
    elif job.is_running:
        search_progress(job)
    else:
        _ended(job)
    show(element("div", element("p", CAUTION), css="caution"))


def _head(job: Job | None) -> None:
    with st.container(horizontal=True, vertical_alignment="center", horizontal_alignment="distribute"):
        st.title("Outdoor room concepts", anchor=False, width="content")
        if job is not None:
            st.button("Another scenario", on_click=put_away, key="another")


@st.cache_resource(max_entries=20, show_spinner=False)
def _result(path: Path) -> Result:
    return read_result(path)


def _ended(job: Job) -> None:
    try:
        result = _result(job.result_path) if job.result_path.is_file() else None
    except InputError as error:
        st.error("The result of this search cannot be read.")
        problem_list(tuple(str(problem) for problem in error.problems))
        return
    if result is None:
        _no_result(job)
    elif not result.option_set.options:
        _nothing(result)
    else:
        _concepts(job, result)


def _no_result(job: Job) -> None:
    st.error("The search ended without a result. What it said:")
    problem_list(job.said)


def _nothing(result: Result) -> None:
    st.subheader("No concept", anchor=False)
    paragraph(ending(result.option_set), css="lead")
    if result.option_set.conflict is not None:
        _conflict(result.option_set.conflict, words_of(result.scenario))


def _conflict(conflict: Conflict, words: Words) -> None:
    paragraph(words.signed(conflict.words), css="lead")
    rules = (element("li", rule, f" For {listed(rooms)}." if rooms else "") for _, rule, rooms in conflict.rules)
    show(element("ul", *rules))
    if conflict.ways_out:
        paragraph("What would help. Each was tried, and concepts were found with it.")
        show(element("ul", *(element("li", sentence(words.signed(way.text))) for way in conflict.ways_out)))


def _concepts(job: Job, result: Result) -> None:
    show(element("p", element("strong", result.scenario.name), f" · {ending(result.option_set)}", css="quiet"))
    if result.option_set.conflict is not None:
        # Layouts of one's own are there also where nothing fits.
        _conflict(result.option_set.conflict, words_of(result.scenario))
    if _view() == _BUDGETS:
        budget_view(job, result)
        return
    opened = result.option(opened_concept() or "")
    option = opened or result.option_set.options[0]
    list_side, sheet_side = st.columns([5, 11], gap="large")
    # The sheet first: the small plans of the list take a moment to draw.
    with sheet_side, st.container(key="concept_sheet_front" if opened else "concept_sheet_behind"):
        _opened(job, result, option)
    with list_side, st.container(key="concept_list_behind" if opened else "concept_list_front"):
        concept_list(job, result, option.id)


def _view() -> str:
    """What is looked at: the concepts, or what each budget buys."""
    views = (_CONCEPTS, _BUDGETS)
    at = st.segmented_control(
        "Show", views, default=views[shows_budgets()], key="view", required=True, label_visibility="collapsed"
    )
    show_budgets(wanted=at == _BUDGETS)
    return str(at)


def _opened(job: Job, result: Result, option: Option) -> None:
    with st.container(key="way_back"):
        st.button("All concepts", on_click=close_concept, key="all_concepts")
    beside = _beside(result, option)
    if beside is None:
        concept_sheet(job, result, option)
    else:
        comparison_view(job, result, option, beside)


def _beside(result: Result, option: Option) -> Option | None:
    """Show the opened concept's title with the choice of another to put beside it, and return that one."""
    others = [other for other in result.option_set.options if other.id != option.id]
    with st.container(horizontal=True, vertical_alignment="bottom", horizontal_alignment="distribute"):
        st.header(option.title, anchor=False, width="content")
        if not others:
            return None
        titles = {other.id: other.title for other in others}
        current = concept_beside()
        chosen = st.selectbox(
            "Compare with",
            [*titles],
            index=[*titles].index(current) if current in titles else None,
            format_func=titles.__getitem__,
            placeholder="another concept",
            key=f"beside_{option.rank or option.id}",
            width=220,
        )
    put_beside(chosen)
    return result.option(chosen) if chosen else None
