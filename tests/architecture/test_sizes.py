"""Modules and functions stay small enough to be read at once."""

import ast
from pathlib import Path

LONGEST_MODULE = 400
LONGEST_FUNCTION = 60


def modules(project: Path) -> list[Path]:
    """Every module of the program, of the page and of the tests."""
    return sorted(path for folder in ("optimizer", "ui", "tests") for path in (project / folder).rglob("*.py"))


def test_no_module_is_long(project: Path) -> None:
    """No module has more than 400 lines."""
    lengths = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in modules(project)}
    assert lengths
    assert not {str(path): lines for path, lines in lengths.items() if lines > LONGEST_MODULE}


def test_no_function_is_long(project: Path) -> None:
    """No function has more than 60 lines, its docstring included."""
    long = {
        f"{path}:{node.lineno} {node.name}": node.end_lineno - node.lineno + 1
        for path in modules(project)
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        and node.end_lineno - node.lineno + 1 > LONGEST_FUNCTION
    }
    assert not long
