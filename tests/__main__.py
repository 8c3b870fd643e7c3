"""Run everything that must hold, in order, and say what failed: `python -m tests`.

Needs the extra `test`. Browser tests are skipped where there is no chromium, and pytest's summary says so; with
REQUIRE_BROWSER=1 in the environment they fail instead.
"""

import os
import subprocess
import sys
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
    """Run all steps, also after one has failed; 1 if any failed."""
    failed = []
    for name, command in STEPS:
        print(f"== {name}", flush=True)
        if subprocess.run(command, cwd=ROOT, check=False).returncode:
            failed.append(name)
    print("== failed: " + ", ".join(failed) if failed else "== all passed", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
