"""The page with a made-up search in place of the command; the environment says what it hands over, and how."""

import os
import runpy
import sys
from pathlib import Path

from ui import jobs

PROJECT = Path(__file__).parents[2]
FAKE_SEARCH = PROJECT / "tests" / "ui" / "fake_search.py"
READY, HOW = os.environ["FAKE_SEARCH_READY"], os.environ["FAKE_SEARCH_HOW"]

jobs.search_command = lambda kind, scenario, out, *_: (sys.executable, str(FAKE_SEARCH), str(out), READY, HOW)
runpy.run_path(str(PROJECT / "ui" / "app.py"), run_name="__main__")
