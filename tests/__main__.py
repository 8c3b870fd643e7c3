"""Run everything that must hold, in order, and say what failed: `python -m tests`.

Needs the extra `test`. Browser tests are skipped where there is no chromium, and pytest's summary says so; with
REQUIRE_BROWSER=1 in the environment they fail instead.
"""

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).parents[1]
PROGRAMS = Path(sys.executable).parent

WORKERS = str(min(4, (os.cpu_count() or 2) + 1))
"""One more than there are cores: tests in a browser wait more than they work."""

STEPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("lint", (sys.executable, "-m", "ruff", "check", ".")),
    ("format", (sys.executable, "-m", "ruff", "format", "--check", ".")),
    ("types", (sys.executable, "-m", "mypy")),
    ("import contracts", (str(PROGRAMS / "lint-imports"),)),
    # Each worker takes the next test once it is free.
    ("tests", (sys.executable, "-m", "pytest", "-q", "-n", WORKERS, "--dist", "worksteal")),
)


def main() -> int:
    """Run all steps, also after one has failed; 1 if any failed. The short ones run beside the tests and are told first."""
    *short, (last, command) = STEPS
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT) as tests:
        failed = [name for name, checks in short if _fails(name, checks)]
        print(f"== {last}", flush=True)
        for line in tests.stdout or ():
            sys.stdout.buffer.write(line)
            sys.stdout.flush()
    if tests.returncode:
        failed.append(last)
    print("== failed: " + ", ".join(failed) if failed else "== all passed", flush=True)
    return 1 if failed else 0


def _fails(name: str, command: Sequence[str]) -> bool:
    print(f"== {name}", flush=True)
    return bool(subprocess.run(command, cwd=ROOT, check=False).returncode)


if __name__ == "__main__":
    sys.exit(main())
