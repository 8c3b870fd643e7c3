"""One yard of many: the same command that a person would type, in a process and a folder of its own.

Nothing here refers to this machine's files, so that it can be done on another one.
"""

import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Final

_KEPT: Final = (".json", ".csv", ".svg")
_LONGEST_MESSAGE: Final = 500


@dataclass(frozen=True, slots=True)
class YardDone:
    """How the command ended, what it said last, and the files that it wrote, by name."""

    exit: int
    seconds: float
    message: str
    files: dict[str, str]


def run_yard(
    name: str, data: bytes, arguments: Sequence[str], beside: Mapping[str, bytes] = MappingProxyType({})
) -> YardDone:
    """Find concepts for a scenario file of that name and content, with these further arguments; `beside` are files
    that lie in its folder, by their names there.
    """
    with tempfile.TemporaryDirectory(prefix="outdoor-rooms-") as folder:
        scenario, out = Path(folder) / name, Path(folder) / "out"
        for other, content in beside.items():
            (Path(folder) / other).parent.mkdir(parents=True, exist_ok=True)
            (Path(folder) / other).write_bytes(content)
        scenario.write_bytes(data)
        began = time.monotonic()
        call = (sys.executable, "-m", "optimizer", "options", name, "--out", "out", *arguments)
        done = subprocess.run(  # noqa: S603 - our own command, no shell
            call, cwd=folder, capture_output=True, text=True, errors="replace", check=False
        )
        seconds = round(time.monotonic() - began, 1)
        files = {path.name: path.read_text(encoding="utf-8") for path in _written(out)}
    return YardDone(done.returncode, seconds, "" if done.returncode == 0 else _message(done), files)


def _written(folder: Path) -> list[Path]:
    return sorted(path for path in folder.glob("*") if path.suffix in _KEPT) if folder.is_dir() else []


def _message(done: "subprocess.CompletedProcess[str]") -> str:
    """What the command said when it failed: its problems, or its last line."""
    if done.returncode < 0:
        return f"the process was ended by signal {-done.returncode}"
    said = [line for line in (*done.stdout.splitlines(), *done.stderr.splitlines()) if line.strip()]
    problems = [line for line in said if "expected" in line] or said[-1:]
    return " | ".join(line.strip() for line in problems)[:_LONGEST_MESSAGE]
