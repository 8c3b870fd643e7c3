"""What each budget buys: found on demand beside a search, then a few steps to choose between, each with its plan."""

import json
from collections.abc import Callable
from typing import Final

import streamlit as st

from optimizer.concepts import Option
from optimizer.results import Result
from optimizer.results.schema import from_record
from ui.components.decisions import reason_asked
from ui.components.markup import Markup, element, image, paragraph, problem_list, show
from ui.components.pictures import DESIGNER, OWNER, large_plan
from ui.components.search_progress import search_progress
from ui.components.search_start import begin_search
from ui.searches import Search
from ui.shown import Shown
from ui.state import budgets_search, choose_budget, current_budget, is_for_designer, searching, take_up_budgets
from ui.view_models import BudgetStep, budget_steps, limit_words, words_of

SECONDS: Final = 50.0


def budget_view(search: Search, result: Result, take: Callable[[BudgetStep, str], None]) -> None:
    """Show what each budget buys for the yard of a search; where nobody has asked yet, offer to find it.

    `take` makes a budget the limit of the yard, for the reason given, and searches for concepts within it.
    """
    found = budgets_search(search)
    if found is None:
        _offer(search)
    elif found.is_running:
        st.subheader("What each budget buys", anchor=False)
        search_progress(found.id, 0)
    else:
        _found(found, result, take)


def _offer(search: Search) -> None:
    st.subheader("What each budget buys", anchor=False)
    paragraph(
        "From the least that works to everything at its largest: the most of your wishes that each budget buys, and "
        f"what the next thing costs. This takes about {SECONDS:.0f} seconds.",
        css="lead",
    )
    if st.button("Find what each budget buys", type="primary", key="find_budgets"):
        begin_search(lambda: searching().start_budgets(search, seconds=SECONDS), take_up_budgets)


def _found(found: Search, result: Result, take: Callable[[BudgetStep, str], None]) -> None:
    st.subheader("What each budget buys", anchor=False)
    steps = _steps(found, result)
    if not steps:
        st.error("No budget was found that works. What the search said:")
        problem_list(found.said)
        _offer_again(found)
        return
    said = words_of(result.scenario, for_designer=is_for_designer())
    limit = limit_words(steps, result.scenario.brief.budget.ceiling, said)
    paragraph(f"{said.signed('Budgets are for phase 1, contingency included.')} {limit}")
    step = _chosen(steps, result)
    words, plan = st.columns([5, 11], gap="large")
    with words:
        _told(step)
        as_limit = "limit and materials" if step.level else f"as the {said.term('ceiling')}"
        reason = reason_asked(f"budget_{found.id}")
        if st.button(f"Take this {as_limit}, and find concepts", key="take_budget"):
            take(step, reason)
        _files(found)
    with plan:
        show(_plan(found, step, result))


def _chosen(steps: tuple[BudgetStep, ...], result: Result) -> BudgetStep:
    """Let one step be chosen: at first the one that the yard's own limit allows."""
    known = {step.concept: step for step in steps}
    named = current_budget()
    st.session_state["budget_step"] = named if named in known else _within(steps, result).concept
    chosen = st.segmented_control(
        "Budget",
        [*known],
        format_func=lambda name: known[name].label,
        key="budget_step",
        required=True,
        on_change=lambda: choose_budget(st.session_state["budget_step"]),
        label_visibility="collapsed",
    )
    return known.get(str(chosen), steps[-1])


def _offer_again(found: Search) -> None:
    of = searching().get(found.record.start_from)
    if of is not None and st.button("Find what each budget buys, again", key="find_budgets"):
        begin_search(lambda: searching().start_budgets(of, seconds=SECONDS), take_up_budgets)


def _within(steps: tuple[BudgetStep, ...], result: Result) -> BudgetStep:
    """The step that the yard's own ceiling buys, else the first; without a ceiling the last."""
    usual = steps[-1] if result.scenario.brief.budget.ceiling is None else steps[0]
    return next((step for step in steps if step.is_own), usual)


def _told(step: BudgetStep) -> None:
    materials = f", in {step.level} materials" if step.level else ""
    paragraph(f"About {step.cost}, within {step.ceiling}{materials}", css="lead")
    show(element("ul", *(element("li", room) for room in step.rooms)))
    for text in (step.adds, step.next):
        if text:
            paragraph(f"{text}.", css="quiet")


def _files(found: Search) -> None:
    picture, table = found.file("budgets.svg"), found.file("budgets.csv")
    if picture is not None and table is not None:
        with st.expander("All budgets that were found"):
            show(
                element(
                    "div", image(picture.decode(), words="Worth against money, one step for each budget"), css="plan"
                )
            )
            st.download_button("As a table (CSV)", table, "budgets.csv", "text/csv", key="csv", on_click="ignore")


def _plan(found: Search, step: BudgetStep, result: Result) -> Markup:
    """Give the plan of a step's concept; budgets are found in the yard of the result that they begin from."""
    documents = json.loads(found.document() or b"{}").get("options", ())
    record = next((each for each in documents if each["id"] == step.concept), None)
    if record is None:
        return element("p", "The plan of this budget is not there; find the budgets again to draw it.", css="quiet")
    option: Option = from_record(Option, record, "budgets.json")
    return large_plan(Shown(found, result, option), DESIGNER if is_for_designer() else OWNER)


def _steps(found: Search, result: Result) -> tuple[BudgetStep, ...]:
    data, scenario = found.document(), result.scenario
    return () if data is None else budget_steps(json.loads(data), words_of(scenario), scenario.brief.budget.ceiling)
