"""The page of one yard, a step for each decision; without a yard the start."""

import streamlit as st

from optimizer.errors import InputError
from ui.components import (
    element,
    problem_list,
    scenario_choice,
    show,
    strip,
    wishes_form,
)
from ui.state import current_revision, current_step, names_lost_work, store, told_once
from ui.steps.choose import choose
from ui.steps.others import budgets_step, handover_step, hold_step
from ui.store import Revision, StoreError
from ui.view_models import CAUTION
from ui.yards import scenario_of


def yard_page() -> None:
    """Show the page, in the step that its address names."""
    try:
        store()
    except StoreError as error:
        st.error(str(error))
        return
    revision = current_revision()
    if revision is None:
        _start()
    else:
        _yard(revision)
    show(element("div", element("p", CAUTION), css="caution"))


def _start() -> None:
    st.title("Outdoor room concepts", anchor=False)
    if names_lost_work():
        st.warning("What this address names is not kept here. Open the yard again, or a result of it.")
    scenario_choice()


def _yard(revision: Revision) -> None:
    try:
        scenario = scenario_of(revision)
    except InputError as error:
        st.error("This version of the yard cannot be read by this program:")
        problem_list(error)
        return
    strip(scenario)
    if (told := told_once()) is not None:
        st.warning(told)
    step = current_step()
    if step == "yard":
        wishes_form(revision, scenario)
    elif step == "budgets":
        budgets_step(revision)
    elif step == "choose":
        choose(revision)
    elif step == "hold":
        hold_step(revision, scenario)
    else:
        handover_step(revision)
