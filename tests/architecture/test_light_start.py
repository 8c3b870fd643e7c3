"""Asking for help is quick: the heavy libraries are imported only by the commands that need them."""

import subprocess
import sys
from pathlib import Path

HEAVY = ("ortools", "pandas", "pvlib", "streamlit", "plotly")


def test_the_command_line_starts_without_heavy_libraries(project: Path) -> None:
    """Importing the command line imports neither the solver nor the libraries for sun, tables and the page."""
    program = f"import sys, optimizer.cli; print([name for name in {HEAVY} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", program], cwd=project, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
