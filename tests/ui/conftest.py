"""The page in this process, on a made-up search."""

import os
import sys
from pathlib import Path

import pytest
import streamlit as st
from streamlit.testing.v1 import AppTest

from tests.ui.sample_concepts import sample_concepts, write_ready, write_ready_budgets

FAKE_SEARCH = Path(__file__).parent / "fake_search.py"


@pytest.fixture(scope="session")
def ready(tmp_path_factory):
    """Folder of a finished search of four concepts."""
    folder = tmp_path_factory.mktemp("ready")
    write_ready(folder, sample_concepts())
    write_ready_budgets(folder)
    return folder


@pytest.fixture
def searches(monkeypatch, ready, tmp_path_factory):
    """Set how the made-up search behaves, and optionally what it hands over; every search is ended afterwards."""
    from ui import jobs
    from ui.state import WORK, searching

    def behave(how, folder=ready):
        command = (sys.executable, str(FAKE_SEARCH))
        monkeypatch.setattr(
            jobs, "search_command", lambda kind, scenario, out, *_: (*command, str(out), str(folder), how)
        )

    st.cache_resource.clear()
    st.cache_data.clear()
    monkeypatch.setitem(os.environ, WORK, str(tmp_path_factory.mktemp("work")))
    behave("at_once")
    yield behave
    for job in searching().table.jobs:
        job.stop()
        job.process.wait()
    st.cache_resource.clear()
    st.cache_data.clear()


@pytest.fixture
def tab(project):
    """Give the page as a new tab opens it."""
    return AppTest.from_file(project / "ui" / "app.py", default_timeout=20)
