"""What each budget buys: found on demand beside a search, then a few steps to choose between, each with its plan."""

import json
from typing import Final

import streamlit as st

from optimizer.results import Result
from ui.components.markup import Markup, element, image, paragraph, problem_list, show
from ui.components.search_progress import search_progress
from ui.components.search_start import begin_search
from ui.jobs import Job
from ui.state import budgets_job, job_table, take_up_budgets
from ui.view_models import BudgetStep, budget_steps, words_of

SECONDS: Final = 50.0


def budget_view(job: Job, result: Result) -> None:
    """Show what each budget buys for the yard of a search; where nobody has asked yet, offer to find it."""
    found = budgets_job(job)
    if found is None:
        _offer(job)
    elif found.is_running:
        search_progress(found)
    else:
        _found(found, result)


def _offer(job: Job) -> None:
    st.subheader("What each budget buys", anchor=False)
    paragraph(
        "From the least that works to everything at its largest: the most of your wishes that each budget buys, and "
        f"what the next thing costs. This takes about {SECONDS:.0f} seconds.",
        css="lead",
    )
    if st.button("Find what each budget buys", type="primary", key="find_budgets"):
        begin_search(lambda: job_table().start_budgets(job, seconds=SECONDS), lambda found: take_up_budgets(job, found))


def _found(found: Job, result: Result) -> None:
    steps = _steps(found, result)
    if not steps:
        st.error("No budget was found that works. What the search said:")
        problem_list(found.said)
        return
    st.subheader("What each budget buys", anchor=False)
    paragraph("Budgets are for phase 1, contingency included. Choose one to see what it buys.")
    names = {step.concept: step.ceiling for step in steps}
    chosen = st.segmented_control(
        "Budget",
        [*names],
        default=_within(steps, result).concept,
        format_func=names.__getitem__,
        key="budget_step",
        required=True,
        label_visibility="collapsed",
    )
    step = next((step for step in steps if step.concept == chosen), steps[-1])
    words, plan = st.columns([5, 11], gap="large")
    with words:
        _told(step)
        _files(found)
    with plan:
        show(_plan(found, step))


def _within(steps: tuple[BudgetStep, ...], result: Result) -> BudgetStep:
    """The step that the yard's own ceiling allows, else the first."""
    ceiling = result.scenario.brief.budget.ceiling
    return next((step for step in reversed(steps) if ceiling is None or step.amount <= ceiling), steps[0])


def _told(step: BudgetStep) -> None:
    paragraph(f"About {step.cost}, within {step.ceiling}", css="lead")
    show(element("ul", *(element("li", room) for room in step.rooms)))
    for text in (step.adds, step.next):
        if text:
            paragraph(f"{text}.", css="quiet")


def _files(found: Job) -> None:
    picture = found.folder / "budgets.svg"
    if picture.is_file():
        with st.expander("All budgets that were found"):
            svg = picture.read_text(encoding="utf-8")
            show(element("div", image(svg, words="Worth against money, one step for each budget"), css="plan"))
            st.download_button(
                "As a table (CSV)", (found.folder / "budgets.csv").read_bytes(), "budgets.csv", "text/csv", key="csv"
            )


def _plan(found: Job, step: BudgetStep) -> Markup:
    svg = found.plan_svg(step.concept)
    if svg is None:
        return element("p", "The plan of this budget is not there; find the budgets again to draw it.", css="quiet")
    return element("div", image(svg, words=f"Plan of what {step.ceiling} buys"), css="plan")


def _steps(found: Job, result: Result) -> tuple[BudgetStep, ...]:
    if not found.result_path.is_file():
        return ()
    return budget_steps(json.loads(found.result_path.read_text(encoding="utf-8")), words_of(result.scenario))
