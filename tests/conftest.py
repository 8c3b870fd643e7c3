"""What all tests share: where the project lies, and what becomes of browser tests on a machine without a browser."""

import os
import shutil
from pathlib import Path
from typing import Any

import pytest

PROJECT = Path(__file__).parents[1]
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
BROWSER_REQUIRED = os.environ.get("REQUIRE_BROWSER") == "1"


@pytest.fixture(scope="session")
def project() -> Path:
    """Folder of the project."""
    return PROJECT


@pytest.fixture(scope="session")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """Give the run of a yard by its name; see `tests/shown.py`. Workers of one session share one folder."""
    from tests.shown import runs_in

    own = tmp_path_factory.getbasetemp()
    folder = (own.parent if "PYTEST_XDIST_WORKER" in os.environ else own) / "shown"
    folder.mkdir(exist_ok=True)
    return runs_in(folder)


@pytest.fixture(scope="session")
def chromium() -> str:
    """Path of the browser; a test that asks for it fails where there is none and one is required."""
    if CHROMIUM is None:
        pytest.fail("expected chromium on the PATH, found none; install it with the system's package manager")
    return CHROMIUM


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Skip browser tests where there is no browser, unless the environment requires them."""
    if CHROMIUM is not None or BROWSER_REQUIRED:
        return
    skip = pytest.mark.skip(
        reason="no chromium on this machine; CI sets REQUIRE_BROWSER, and there a missing one fails"
    )
    for item in items:
        if "browser" in item.keywords:
            item.add_marker(skip)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say plainly that the page was not tried in a browser."""
    if CHROMIUM is None and not BROWSER_REQUIRED:
        terminalreporter.write_line("browser tests were skipped: there is no chromium on this machine")
