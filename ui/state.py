"""What the page remembers: the only file that spells a word of the address or a key of the session.

The address says which version of which yard, which step, which search, concept and picture: a link opens the same
view. All that it names is kept (`ui.store`).
"""

import os
import sys
from pathlib import Path
from typing import Final, Literal, get_args

import streamlit as st

from optimizer.layout import Layout
from ui.searches import Search, Searching
from ui.store import Revision, Store, data_folder, open_store

Step = Literal["yard", "budgets", "choose", "hold", "handover"]
STEPS: Final[tuple[Step, ...]] = get_args(Step)
HoldingPart = Literal["hold", "ask", "later", "phases"]
HOLDING_PARTS: Final[tuple[HoldingPart, ...]] = get_args(HoldingPart)
WORK: Final = "OUTDOOR_ROOMS_WORK"
"""Environment: the folder, or the URL of the database, that work is kept in."""
_VERSION: Final = "version"
_STEP: Final = "step"
_SEARCH: Final = "search"
_CONCEPT: Final = "concept"
_BESIDE: Final = "beside"
_LIST: Final = "list"
_FINALISTS: Final = "finalists"
_PICTURE: Final = "picture"
_PART: Final = "part"
_FUTURE: Final = "future"
_ABOUT: Final = "about"
_BUDGETS: Final = "budgets"
_BUDGET: Final = "budget"
_FOR: Final = "for"
_DESIGNER: Final = "designer"
_TOLD: Final = "told"
_ASK: Final = "ask"
_WHY: Final = "why"
_LAYOUT: Final = "opened_layout"


@st.cache_resource
def store() -> Store:
    """Return what is kept; StoreError where it cannot be opened."""
    return open_store(os.environ.get(WORK))


@st.cache_resource
def searching() -> Searching:
    """Return what starts and finds searches on this server."""
    work = os.environ.get(WORK)
    folder = data_folder() if work is None or "://" in work else Path(work).expanduser()
    return Searching(store(), folder / "searches")


def current_revision() -> Revision | None:
    """The version that the address names, or None."""
    version = st.query_params.get(_VERSION, "")
    return store().revisions.get(int(version)) if version.isdigit() and len(version) < 16 else None


def names_lost_work() -> bool:
    """Whether the address names a version that is not kept here."""
    return _VERSION in st.query_params and current_revision() is None


def take_up(revision: Revision, step: Step = "yard") -> None:
    """Go to a version of a yard; what was open of another yard's is closed."""
    st.query_params.from_dict({_VERSION: str(revision.id), _STEP: step, **_kept(_FOR)})


def go_on_with(revision: Revision) -> None:
    """Go to a further version of the same yard, and leave open what is."""
    st.query_params[_VERSION] = str(revision.id)


def put_away() -> None:
    """Go back to the start; a search that runs goes on and is kept."""
    st.query_params.from_dict(_kept(_FOR))


def _kept(*names: str) -> dict[str, str]:
    return {name: st.query_params[name] for name in names if name in st.query_params}


def current_step() -> Step:
    """The step that the address names, else the first."""
    named = st.query_params.get(_STEP)
    return next((step for step in STEPS if step == named), "yard")


def go_to(step: Step) -> None:
    """Go to a step."""
    st.query_params[_STEP] = step


def current_search(revision: Revision) -> Search | None:
    """The search that the address names, if it is of this yard; else the last one of this version or one before it."""
    named = searching().get(st.query_params.get(_SEARCH))
    if named is not None and named.kind == "options" and _is_of(named, revision):
        return named
    known: Revision | None = revision
    while known is not None:
        found = searching().newest(known)
        if found is not None:
            return found
        known = store().revisions.get(known.parent_id) if known.parent_id else None
    return None


def _is_of(search: Search, revision: Revision) -> bool:
    of = store().revisions.get(search.record.revision_id)
    return of is not None and of.yard_id == revision.yard_id


def take_up_search(search: Search) -> None:
    """Make a search the one that is looked at, and go to its concepts."""
    st.session_state.pop(_LAYOUT, None)
    st.query_params[_SEARCH] = search.id
    st.query_params[_STEP] = "choose"
    for name in (_CONCEPT, _BESIDE, _LIST):
        st.query_params.pop(name, None)


def opened_concept() -> str | None:
    """Name of the concept that the address opens, or None."""
    return st.query_params.get(_CONCEPT)


def open_concept(name: str) -> None:
    """Open a concept, alone."""
    st.session_state.pop(_LAYOUT, None)
    st.query_params[_CONCEPT] = name
    st.query_params.pop(_BESIDE, None)


def hold_from(name: str) -> None:
    """Open a concept and go to where its rooms are held."""
    st.query_params[_CONCEPT] = name
    go_to("hold")


def asked_room() -> str | None:
    """Name of the room that a question is about, or None where rooms are held; the name may be empty."""
    return st.query_params.get(_ASK)


def ask_about(room: str | None) -> None:
    """Ask about a room where rooms are held; None ends it."""
    _set(_ASK, room)


def holding_part() -> HoldingPart:
    """What is looked at where rooms are held: holding itself at first."""
    if asked_room() is not None:
        return "ask"
    named = st.query_params.get(_ABOUT)
    return next((part for part in HOLDING_PARTS if part == named), "hold")


def look_at_part(part: HoldingPart) -> None:
    """Look at another part of where rooms are held."""
    ask_about("" if part == "ask" else None)
    _set(_ABOUT, part if part in {"later", "phases"} else None)


def ask_why(concept: str, room: str) -> None:
    """Open a concept and go to where questions about its rooms are asked."""
    hold_from(concept)
    ask_about(room)


def current_question(revision: Revision) -> Search | None:
    """The question that the address names, if it is about this yard, else the last one about this version."""
    named = searching().get(st.query_params.get(_WHY))
    if named is not None and named.kind == "why" and _is_of(named, revision):
        return named
    return searching().newest(revision, "why")


def take_up_question(asked: Search) -> None:
    """Make a question the one whose answer is looked at."""
    st.query_params[_WHY] = asked.id


def improvement_of(revision: Revision) -> Search | None:
    """The last search for a layout near to a sketch of this version, or None."""
    return searching().newest(revision, "improve")


def opened_layout() -> Layout | None:
    """Layout that the opened concept had when it was last shown, or None."""
    layout: Layout | None = st.session_state.get(_LAYOUT)
    return layout


def remember_layout(layout: Layout) -> None:
    """Remember the layout of the opened concept: while a search goes on, its name passes to others."""
    st.session_state[_LAYOUT] = layout


def close_concept() -> None:
    """Go back to the list of concepts."""
    st.session_state.pop(_LAYOUT, None)
    st.query_params.pop(_CONCEPT, None)
    st.query_params.pop(_BESIDE, None)


def concept_beside() -> str | None:
    """Name of the concept that the opened one is compared with, or None."""
    return st.query_params.get(_BESIDE)


def put_beside(name: str | None) -> None:
    """Compare the opened concept with this one; None ends it."""
    _set(_BESIDE, name)


def lists_finalists() -> bool:
    """Whether the list shows finalists in the place of all concepts."""
    return st.query_params.get(_LIST) == _FINALISTS


def list_finalists(*, wanted: bool) -> None:
    """List finalists, or all concepts."""
    _set(_LIST, _FINALISTS if wanted else None)


def current_picture() -> str | None:
    """Name of the picture that all concepts are shown in, or None."""
    return st.query_params.get(_PICTURE)


def show_picture(name: str | None) -> None:
    """Show all concepts in this picture."""
    _set(_PICTURE, name)


def current_part() -> str | None:
    """Name of the part of a concept that is shown below its plan, or None."""
    return st.query_params.get(_PART)


def show_part(name: str | None) -> None:
    """Show this part of every concept."""
    _set(_PART, name)


def current_future() -> str | None:
    """Name of what may come later that is looked at, or None."""
    return st.query_params.get(_FUTURE)


def look_at_future(name: str | None) -> None:
    """Look at this of what may come later."""
    _set(_FUTURE, name)


def budgets_search(search: Search) -> Search | None:
    """The search for budgets that the address names, else the last one of the same version."""
    named = searching().get(st.query_params.get(_BUDGETS))
    if named is not None and named.kind == "budgets":
        return named
    revision = store().revisions.get(search.record.revision_id)
    return None if revision is None else searching().newest(revision, "budgets")


def take_up_budgets(found: Search) -> None:
    """Make a search for budgets the one that is looked at."""
    st.query_params[_BUDGETS] = found.id


def current_budget() -> str | None:
    """Name of the budget that is chosen, or None."""
    return st.query_params.get(_BUDGET)


def choose_budget(name: str | None) -> None:
    """Choose a budget."""
    _set(_BUDGET, name)


def is_for_designer() -> bool:
    """Whether the page speaks to a designer: the trade's words, and plans with dimensions and levels."""
    return st.query_params.get(_FOR) == _DESIGNER


def speak_to_designer(*, wanted: bool) -> None:
    """Speak to a designer, or to an owner."""
    _set(_FOR, _DESIGNER if wanted else None)


def tell_once(words: str) -> None:
    """Say something at the top of the page when it is next drawn."""
    st.session_state[_TOLD] = words


def told_once() -> str | None:
    """What is to be said now, once."""
    told: str | None = st.session_state.pop(_TOLD, None)
    return told


def _set(name: str, value: str | None) -> None:
    if value is None:
        st.query_params.pop(name, None)
    else:
        st.query_params[name] = value


def scenario_argument() -> Path | None:
    """Scenario file given on the command line after `--`, or None; a test's own command line is none of ours."""
    is_ours = Path(sys.argv[0]).name == "app.py" and len(sys.argv) > 1
    return Path(sys.argv[1]) if is_ours else None
