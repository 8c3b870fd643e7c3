"""The tree holds what it may, and the tests mirror the code."""

import ast
from pathlib import Path

from optimizer.brief import RULES
from optimizer.check import CHECKS
from optimizer.engine.rules import PARTS

TOP_LEVEL = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "optimizer", "ui", "tests", "scenarios"}


def ignored_names(project: Path) -> set[str]:
    """Names that version control leaves out."""
    lines = (project / ".gitignore").read_text(encoding="utf-8").split()
    return {line.strip("/") for line in lines}


def test_top_level_holds_only_what_it_may(project: Path) -> None:
    """Beside hidden files and build output, the top level has the listed names only."""
    ignored = ignored_names(project)
    found = {
        path.name
        for path in project.iterdir()
        if not path.name.startswith(".") and path.name not in ignored and not path.name.endswith(".egg-info")
    }
    assert found <= TOP_LEVEL
    assert {"README.md", "DEVELOPERS.md", "pyproject.toml", "optimizer", "ui", "tests", "scenarios"} <= found


def has_logic(path: Path) -> bool:
    """Whether a module defines a function of its own, outside a class."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return any(isinstance(node, ast.FunctionDef) for node in tree.body)


def test_tests_mirror_the_code(project: Path) -> None:
    """Every folder of the program that holds more than data types has a folder of tests in the same place."""
    folders = {path.parent for path in (project / "optimizer").rglob("*.py") if has_logic(path)}
    mirrored = [project / "tests" / folder.relative_to(project) for folder in sorted(folders)]
    assert len(mirrored) > 10
    assert not [str(folder) for folder in mirrored if not any(folder.glob("test_*.py"))]


def test_every_rule_has_a_model_part_and_a_check() -> None:
    """Rules, checks and model parts carry the same ids."""
    assert set(RULES) == set(CHECKS) == set(PARTS)


def test_every_test_file_is_collected(project: Path) -> None:
    """A file of tests that pytest would not collect, for want of its name, has no test function in it."""
    strays = [
        str(path)
        for path in (project / "tests").rglob("*.py")
        if not path.name.startswith("test_") and "\ndef test_" in path.read_text(encoding="utf-8")
    ]
    assert not strays
