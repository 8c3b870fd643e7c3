"""The steps beside choosing: what each budget buys, hold here, hand over; each begins from a search."""

from dataclasses import replace

import streamlit as st

from optimizer.errors import InputError
from optimizer.scenario import Scenario
from ui.components import budget_view, handover, hold_form, paragraph, problem_list
from ui.components.search_start import USUAL_S
from ui.components.wishes_form import saved_as, search_from
from ui.decided import decided_on
from ui.edits import changed, wanted_of
from ui.searches import Search
from ui.shown import Shown, concepts_of, shown_by
from ui.state import current_search, go_to, opened_concept, searching, store
from ui.store import Revision
from ui.view_models import BudgetStep
from ui.yards import scenario_of


def budgets_step(revision: Revision) -> None:
    """Show what each budget buys."""
    found = _found(revision)
    if found is not None:
        search, concepts = found
        budget_view(search, concepts[0].result, lambda step, reason: _take(revision, search, step, reason))


def _take(revision: Revision, search: Search, step: BudgetStep, reason: str) -> None:
    """Make a budget the limit of the yard, in its materials, and search on for concepts within it."""
    scenario = scenario_of(revision)
    was = wanted_of(scenario.brief)
    level = step.level if step.level in was.levels else was.level
    text, what = changed(scenario, replace(was, ceiling=step.amount, level=level))
    saved = saved_as(revision, text, what, reason) if what else revision
    search_from(saved, search.seconds or USUAL_S, search)


def hold_step(revision: Revision, scenario: Scenario) -> None:
    """Show what is held, and hold more from the concept that is open, else from the first."""
    found = _found(revision)
    if found is not None:
        _, concepts = found
        opened = shown_by(opened_concept(), searching())
        hold_form(revision, scenario, opened or concepts[0])


def handover_step(revision: Revision) -> None:
    """Show what can be handed over."""
    found = _found(revision)
    if found is not None:
        search, concepts = found
        handover(search, concepts, store().finalists.of_yard(revision.yard_id), decided_on(revision.yard_id))


def _found(revision: Revision) -> tuple[Search, tuple[Shown, ...]] | None:
    """Give the search at hand with its concepts; where there are none yet, say so and lead to where they are found."""
    search = current_search(revision)
    try:
        concepts = () if search is None else concepts_of(search)
    except InputError as error:
        st.error("The result of this search cannot be read.")
        problem_list(error)
        return None
    if search is None or not concepts:
        paragraph("There are no concepts of this yard yet.", css="lead")
        st.button("Find concepts", on_click=go_to, args=("yard" if search is None else "choose",), key="to_search")
        return None
    return search, concepts
