"""What the page remembers: the only file that spells a session key or a word of the address.

The address says which search, which concept and what it is compared with, so that it can be passed on; the session
keeps the search of this tab, so that an address with a concept alone opens it in the search at hand.
"""

import sys
from pathlib import Path
from typing import Final

import streamlit as st

from ui.jobs import Job, JobTable

_JOB: Final = "job"
_CONCEPT: Final = "concept"
_BESIDE: Final = "beside"
_VIEW: Final = "view"
_BUDGETS: Final = "budgets"


@st.cache_resource
def job_table() -> JobTable:
    """Return the one table of searches of this server."""
    return JobTable()


def current_job() -> Job | None:
    """Return the search that the address names, else the one of this session."""
    job = job_table().get(st.query_params.get(_JOB)) or job_table().get(st.session_state.get(_JOB))
    if job is not None:
        st.session_state[_JOB] = job.id
    return job


def names_lost_job() -> bool:
    """Whether the address names a search that is no longer kept."""
    return _JOB in st.query_params and current_job() is None


def take_up(job: Job) -> None:
    """Make a search the one of this session and address."""
    st.session_state[_JOB] = job.id
    st.query_params.from_dict({_JOB: job.id})


def put_away() -> None:
    """Leave the search at hand and go back to the start; a running one ends and keeps its files."""
    job = current_job()
    for search in (job, job and budgets_job(job)):
        if search is not None:
            search.stop()
    st.session_state.pop(_JOB, None)
    st.query_params.clear()


def opened_concept() -> str | None:
    """Id of the concept that the address opens, or None."""
    return st.query_params.get(_CONCEPT)


def open_concept(concept_id: str) -> None:
    """Open a concept, alone."""
    st.query_params[_CONCEPT] = concept_id
    st.query_params.pop(_BESIDE, None)


def close_concept() -> None:
    """Go back to the list of concepts."""
    st.query_params.pop(_CONCEPT, None)
    st.query_params.pop(_BESIDE, None)


def concept_beside() -> str | None:
    """Id of the concept that the opened one is compared with, or None."""
    return st.query_params.get(_BESIDE)


def put_beside(concept_id: str | None) -> None:
    """Compare the opened concept with this one; None ends it."""
    if concept_id is None:
        st.query_params.pop(_BESIDE, None)
    else:
        st.query_params[_BESIDE] = concept_id


def shows_budgets() -> bool:
    """Whether the address shows what each budget buys in place of the concepts."""
    return st.query_params.get(_VIEW) == _BUDGETS


def show_budgets(*, wanted: bool) -> None:
    """Show what each budget buys, or the concepts."""
    if wanted:
        st.query_params[_VIEW] = _BUDGETS
    else:
        st.query_params.pop(_VIEW, None)


def budgets_job(job: Job) -> Job | None:
    """The search for budgets that the address names, else the one of this session for the same yard."""
    known = st.session_state.get(f"{_BUDGETS}/{job.id}")
    return job_table().get(st.query_params.get(_BUDGETS)) or job_table().get(known)


def take_up_budgets(job: Job, found: Job) -> None:
    """Make a search for budgets the one that goes with a search."""
    st.session_state[f"{_BUDGETS}/{job.id}"] = found.id
    st.query_params[_BUDGETS] = found.id


def scenario_argument() -> Path | None:
    """Scenario file given on the command line after `--`, or None; a test's own command line is none of ours."""
    is_ours = Path(sys.argv[0]).name == "app.py" and len(sys.argv) > 1
    return Path(sys.argv[1]) if is_ours else None
