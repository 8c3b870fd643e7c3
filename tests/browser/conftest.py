"""A served page on a made-up search, and a browser to look at it."""

import os
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path
from time import monotonic, sleep

import pytest
from playwright.sync_api import sync_playwright

from tests.ui.sample_concepts import sample_concepts, write_ready, write_ready_budgets

SERVED = Path(__file__).parent / "page_on_fake_search.py"
LOG = "server.log"
SIZES = {"desk": (1440, 900), "phone": (390, 844)}
BETWEEN = {"small desk": (1024, 768), "tablet": (800, 900), "twice the size": (720, 450)}
"""Widths between the two; the last is a desk at 200 %."""


@pytest.fixture(scope="session")
def serve(project, tmp_path_factory):
    """Give the address of a page whose searches behave in a given way; every page is ended at the end."""
    ready = tmp_path_factory.mktemp("ready")
    write_ready(ready, sample_concepts())
    write_ready_budgets(ready)
    servers = {}

    def address(how):
        if how not in servers:
            work = tmp_path_factory.mktemp("work")
            servers[how] = (*started(project, ready, how, work), work)
        return servers[how][1]

    yield address
    died = [(work / LOG).read_text() for process, _, work in servers.values() if process.poll() is not None]
    for process, *_ in servers.values():
        process.terminate()
        process.wait(10)
    assert not died, "\n".join(died)


def started(project, ready, how, work):
    """Start a page whose searches hand over what is in a folder, and which keeps work in another; give its process and
    its address. What the server says, the place where it died included, is kept beside the work.
    """
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        port = trial.getsockname()[1]
    command = (sys.executable, "-m", "streamlit", "run", str(SERVED), f"--server.port={port}")
    # The working folder brings the page's own configuration.
    environment = {
        "PYTHONPATH": str(project),
        "PYTHONFAULTHANDLER": "1",
        "FAKE_SEARCH_READY": str(ready),
        "FAKE_SEARCH_HOW": how,
        "OUTDOOR_ROOMS_WORK": str(work),
    }
    with (work / LOG).open("ab") as log:
        process = subprocess.Popen(
            command, cwd=project / "ui", env={**os.environ, **environment}, stdout=log, stderr=subprocess.STDOUT
        )
    address = f"http://127.0.0.1:{port}/"
    _wait_for(address)
    return process, address


def _wait_for(address):
    end = monotonic() + 30
    while monotonic() < end:
        try:
            with urllib.request.urlopen(f"{address}_stcore/health", timeout=1):
                return
        except OSError:
            sleep(0.1)
    pytest.fail("expected the page within 30 s, found no answer")


@pytest.fixture(scope="session")
def window(chromium):
    """Give one browser for all tests."""
    with sync_playwright() as driver:
        arguments = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run"]
        browser = driver.chromium.launch(executable_path=chromium, args=arguments)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def ready(tmp_path_factory):
    """Folder of a finished search of four concepts, for a server of one's own."""
    folder = tmp_path_factory.mktemp("ready")
    write_ready(folder, sample_concepts())
    return folder


@pytest.fixture(params=SIZES)
def look(request, window):
    """Give a tab at the width of a desk and of a phone; it must ask nothing of the outside and report no error."""
    yield from _tab(window, request.param, SIZES[request.param])


@pytest.fixture
def desk(window):
    """Give a tab at the width of a desk, as `look` does."""
    yield from _tab(window, "desk", SIZES["desk"])


def _tab(window, name, size):
    width, height = size
    context = window.new_context(viewport={"width": width, "height": height})
    tab = context.new_page()
    outside, errors = [], []
    tab.on("request", lambda asked: outside.append(asked.url) if _is_outside(asked.url) else None)
    tab.on("pageerror", lambda error: errors.append(str(error)))
    tab.is_phone = name == "phone"
    yield tab
    context.close()
    assert not outside
    assert not errors


def _is_outside(url):
    return not url.startswith(("http://127.0.0.1:", "ws://127.0.0.1:", "data:", "blob:"))
