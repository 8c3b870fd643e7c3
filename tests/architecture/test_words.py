"""Words that the product does not use, and places that no file may name."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

# Not said on screen or paper; DEVELOPERS.md has the words that are.
UNSAID = re.compile(
    r"\b(study|studies|shortlist\w*|layer panel|massing|pin|pins|pinned|frontier|generator)\b", re.IGNORECASE
)
MACHINE_PATH = re.compile(r"(?<![\w.])/(work|home|root|opt|tmp)/")
REGISTRY = re.compile(r"pypi\.org|python[h]osted|index-url|npmjs|anaconda\.org", re.IGNORECASE)
THIS_FILE = Path(__file__)
TEXT_ENDINGS = {".py", ".md", ".toml", ".yaml", ".yml", ".json", ".txt", ".js", ".css", ".html", ".svg", ".csv", ""}


def text_files(project: Path) -> Iterator[Path]:
    """Every text file of the project itself."""
    for name in ("README.md", "DEVELOPERS.md", "pyproject.toml", ".gitignore"):
        yield project / name
    for folder in ("optimizer", "ui", "tests", "scenarios", ".ci"):
        for path in sorted((project / folder).rglob("*")):
            if path.is_file() and path.suffix in TEXT_ENDINGS and path != THIS_FILE and "__pycache__" not in path.parts:
                yield path


def docstrings(tree: ast.Module) -> set[int]:
    """Identities of the nodes that are bare text: docstrings and what stands below an attribute."""
    return {
        id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }


def said(path: Path) -> Iterator[str]:
    """Texts of a module that can reach a screen: its string literals, docstrings aside."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    skipped = docstrings(tree)
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in skipped:
            yield node.value


def test_words_on_screen(project: Path) -> None:
    """No text of the program or the page says a word that we do not use."""
    paths = [path for folder in ("optimizer", "ui") for path in sorted((project / folder).rglob("*.py"))]
    assert len(paths) > 100
    assert not [(str(path), text) for path in paths for text in said(path) if UNSAID.search(text)]


def test_words_in_what_a_user_reads(project: Path) -> None:
    """README, the demonstration yards and the page's own assets keep to our words too."""
    assets = [path for path in (project / "ui").rglob("*") if path.suffix in {".html", ".md", ".svg", ".js"}]
    paths = [project / "README.md", *(project / "scenarios").glob("*.yaml"), *assets]
    assert not [str(path) for path in paths if UNSAID.search(path.read_text(encoding="utf-8"))]


@pytest.mark.parametrize("pattern", [MACHINE_PATH, REGISTRY], ids=["machine path", "registry"])
def test_no_file_names_a_machine_or_a_registry(project: Path, pattern: re.Pattern[str]) -> None:
    """Nothing in the project depends on where it was written or from where packages came."""
    files = list(text_files(project))
    assert len(files) > 50
    hits = [
        f"{path}:{number}"
        for path in files
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1)
        if pattern.search(line)
    ]
    assert not hits


def test_the_patterns_find_what_they_forbid() -> None:
    """The patterns match examples of what is forbidden, and leave ordinary words alone."""
    assert UNSAID.search("Save this study")
    assert MACHINE_PATH.search("open('/home/someone/x')")
    assert REGISTRY.search("https://py" + "pi.org/simple")
    assert not UNSAID.search("spinning steady concept, sturdy")
