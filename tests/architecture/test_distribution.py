"""What the package asks for is bounded, what the tests ran with is pinned, and README's commands are whole."""

import re
import tomllib
from importlib import metadata
from pathlib import Path
from typing import Any

import pytest


@pytest.fixture(scope="module")
def settings(project: Path) -> dict[str, Any]:
    """The project's settings file."""
    return tomllib.loads((project / "pyproject.toml").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def requirements(settings: dict[str, Any]) -> list[str]:
    """Every direct requirement: of the package, and of its tests."""
    extras = settings["project"]["optional-dependencies"].values()
    return [*settings["project"]["dependencies"], *(line for extra in extras for line in extra)]


@pytest.fixture(scope="module")
def pins(project: Path) -> dict[str, str]:
    """Pinned version of each package, by its plain name."""
    lines = (project / "tests" / "constraints.txt").read_text(encoding="utf-8").split()
    return {plain(line.split("==")[0]): line.split("==")[1] for line in lines}


def plain(name: str) -> str:
    """A package's name as registries compare it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def name_of(requirement: str) -> str:
    """The plain name at the head of a requirement."""
    return plain(re.match(r"[\w.-]+", requirement).group())


def test_every_direct_dependency_has_a_floor_and_a_cap(requirements: list[str]) -> None:
    """Each requirement has `>=` and `<`, so that neither an old nor a new release comes in unseen."""
    assert len(requirements) > 10
    assert not [line for line in requirements if ">=" not in line or not re.search(r"<(?!=)", line)]


def test_every_direct_dependency_is_pinned(requirements: list[str], pins: dict[str, str]) -> None:
    """The constraints name an exact version of each direct dependency."""
    assert not {name_of(line) for line in requirements} - set(pins)


def test_constraints_hold_nothing_but_versions(project: Path) -> None:
    """Every line is `name==version`: no address, no local folder, not the project itself."""
    lines = (project / "tests" / "constraints.txt").read_text(encoding="utf-8").splitlines()
    assert all(re.fullmatch(r"[\w.-]+==[\w.]+", line) for line in lines)
    assert not [line for line in lines if line.startswith("outdoor")]


def test_tests_run_with_the_pinned_solver(pins: dict[str, str]) -> None:
    """The solver at hand is the pinned one: another may prove, and find, something else."""
    assert metadata.version("ortools") == pins["ortools"]


def test_readme_commands_are_whole(project: Path) -> None:
    """The first two code blocks are one line each, make their own environment and use the pinned versions."""
    blocks = re.findall(
        r"^```\w*\n(.*?)^```", (project / "README.md").read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL
    )
    for block in blocks[:2]:
        assert block.count("\n") == 1
        assert block.startswith("python3.11 -m venv .venv && ")
        assert "-c tests/constraints.txt" in block
    assert "outdoor-rooms options scenarios/" in blocks[0]
    assert blocks[1].rstrip().endswith("python -m tests")


def test_scenario_of_the_first_command_exists(project: Path) -> None:
    """The yard that README's first command opens is in the project."""
    name = re.search(r"scenarios/[\w-]+\.yaml", (project / "README.md").read_text(encoding="utf-8")).group()
    assert (project / name).is_file()
