"""Asking for help and checking a yard are quick: heavy libraries are imported only by what needs them."""

import subprocess
import sys
from pathlib import Path

import pytest

ENGINE = ("ortools", "pandas", "pvlib", "streamlit", "plotly")
TABLES = (*ENGINE, "rich.console", "rich.table", "scipy.spatial", "scipy.sparse", "scipy.ndimage")
ALL = (*TABLES, "numpy", "scipy", "shapely", "yaml", "optimizer.scenario")
SUN = """import optimizer.cli.app
from datetime import datetime
from optimizer.fields import sun_at
from optimizer.site import Place
sun_at(Place(40.0, -83.0, 'UTC'), datetime(2026, 6, 21, 12))"""
FLAT_YARD = "scenarios/wattle-rise.yaml"
"""Without levels: triangles of the ground are what scipy.spatial is for."""


def imported(project: Path, program: str) -> list[str]:
    """Names of the modules that a program ends with, where all went well."""
    told = f"import sys\n{program}\nprint(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", told], cwd=project, capture_output=True, text=True, check=True)
    return done.stdout.splitlines()[-1].split()


@pytest.mark.parametrize(
    ("program", "heavy"),
    [
        ("import optimizer.cli", (*ALL, "pydantic")),
        ("from optimizer.cli import main; assert main(['--help']) == 0", ALL),
        (f"from optimizer.cli import main; assert main(['check', {FLAT_YARD!r}]) == 0", TABLES),
        (SUN, ENGINE),
    ],
    ids=["import", "help", "check", "sun"],
)
def test_a_start_imports_nothing_that_it_does_not_need(project: Path, program: str, heavy: tuple[str, ...]) -> None:
    """Neither solver nor page, nor libraries for tables, sun and triangles; for help, none at all."""
    found = imported(project, program)
    assert "optimizer.cli.app" in found
    assert not [name for name in heavy if name in found]
