"""All benchmarks, one after the other, as one report.

    python -m tests.benchmarks.report [--quick] [--against WORKTREE]

`--quick` takes less time for each and fewer files: whether all run, and roughly what they say. A benchmark that fails is
named at the end, and the exit status is 1; the others run all the same.
"""

import argparse
import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

ROOT = Path(__file__).parents[2]

Part = tuple[str, tuple[str, ...]]
"""A benchmark's module, and what it is called with."""


def parts(*, quick: bool, against: Path | None) -> Iterator[Part]:
    """What is run, in order: right answers first, then how good and how fast they are."""
    instances = _files("tests/benchmarks/instances/*.json")
    yards = _files("scenarios/*.yaml")
    few_instances, few_yards = [name for name in instances if "nug" in name or "Cl" in name], yards[-1:]
    other = () if against is None else ("--against", str(against))
    yield "published", (*instances, "--seconds", "2" if quick else "10")
    yield "agreement", (*(few_yards if quick else yards), "--layouts", "40" if quick else "200")
    yield "reproved", (*(few_yards if quick else yards), "--options", "1" if quick else "3")
    yield "rebuilds", (*other, *(("--only", *few_yards, "--times", "1") if quick else ()))
    yield "against", ((*few_yards, *few_instances, "--seconds", "3") if quick else ())
    yield "growth", (("--quick",) if quick else ())


def run(part: Part) -> bool:
    """Print what one benchmark prints under its name; whether it ended well."""
    name, arguments = part
    print(f"\n## {name}\n", flush=True)
    call = [sys.executable, "-m", f"tests.benchmarks.{name}", *arguments]
    return subprocess.run(call, cwd=ROOT, check=False).returncode == 0


def main(arguments: Sequence[str] | None = None) -> int:
    """Run all and print the report."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--quick", action="store_true")
    parser.add_argument("--against", type=Path)
    call = parser.parse_args(arguments)
    other = None if call.against is None else call.against.resolve()
    failed = [part[0] for part in parts(quick=call.quick, against=other) if not run(part)]
    print(f"\n{'failed: ' + ', '.join(failed) if failed else 'all ended well'}")
    return 1 if failed else 0


def _files(pattern: str) -> list[str]:
    return sorted(str(path.relative_to(ROOT)) for path in ROOT.glob(pattern))


if __name__ == "__main__":
    sys.exit(main())
