"""Rebuilds a second and the judge's time a layout, of this working tree against another.

    python -m tests.benchmarks.rebuilds --against WORKTREE [YARD...] --times 3

A rebuild takes rooms out and puts each back at its exact best. "Cold" are the first 60 on a fresh board, "warm" tours of 60,
100 and 150 after them, each from nothing. Both trees judge the same layouts, which this tree found. All is processor
time; the trees take turns, and the median of all turns counts, since other work on the machine slows either. Without
`--against` this tree is measured alone. Yards are those of `scenarios` and the files given.
"""

import argparse
import json
import os
import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[2]
PROBE = Path(__file__).with_name("probe.py")
FIGURES = {"read": "read s", "cold": "cold /s", "warm": "warm /s", "judge": "judge ms"}
FASTER_IF_MORE = ("cold", "warm")

Speeds = dict[str, float]


def asked(tree: Path, *arguments: str, given: str = "") -> str:
    """What the probe prints in a tree. Raises RuntimeError with its words where it fails."""
    threads = dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"), "1")
    done = subprocess.run(
        [sys.executable, str(PROBE), *arguments],
        cwd=tree,
        env={**os.environ, **threads, "PYTHONPATH": str(tree)},
        input=given,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise RuntimeError(f"{tree}: {done.stderr}")
    return done.stdout


def measured(yard: Path, trees: Sequence[Path], *, times: int, layouts: int, warm: Sequence[str] = ()) -> list[Speeds]:
    """Median speeds of each tree with a yard, the trees taking turns. `warm`: other tours for the warm rebuilds."""
    given = asked(ROOT, "lay", str(yard), "--layouts", str(layouts))
    turns: list[list[Speeds]] = [[] for _ in trees]
    for turn in range(times):
        # Every other turn the last is first, so that neither always finds the machine warmer.
        for number in sorted(range(len(trees)), reverse=turn % 2 == 1):
            turns[number].append(json.loads(asked(trees[number], "time", str(yard), *warm, given=given)))
    return [{name: median(speeds[name] for speeds in own) for name in FIGURES} for own in turns]


def table(rows: dict[str, list[Speeds]]) -> Iterator[str]:
    """Speeds by yard: of this tree, and where there is another its own and how many times as fast this one is."""
    compared = any(len(speeds) > 1 for speeds in rows.values())
    heads = [f"{head:>9}" + (f"{'other':>9}{'times':>7}" if compared else "") for head in FIGURES.values()]
    yield f"{'yard':20}" + "".join(heads)
    for yard, speeds in rows.items():
        yield f"{yard:20}" + "".join(_cell(name, speeds) for name in FIGURES)


def _cell(name: str, speeds: list[Speeds]) -> str:
    values = [own[name] for own in speeds]
    cell = "".join(f"{value:>9.3g}" if value < 100 else f"{value:>9.0f}" for value in values)
    if len(values) == 1:
        return cell
    return cell + f"{values[0] / values[1] if name in FASTER_IF_MORE else values[1] / values[0]:>7.2f}"


def main(arguments: Sequence[str] | None = None) -> int:
    """Measure every yard in both trees and print one table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("yards", nargs="*", type=Path)
    parser.add_argument("--against", type=Path)
    parser.add_argument("--times", type=int, default=3)
    parser.add_argument("--layouts", type=int, default=12)
    parser.add_argument("--only", action="store_true", help="measure the yards given alone")
    call = parser.parse_args(arguments)
    yards = [*([] if call.only else sorted((ROOT / "scenarios").glob("*.yaml"))), *call.yards]
    trees = [ROOT] if call.against is None else [ROOT, call.against.resolve()]
    rows = {
        yard.stem: measured(yard.resolve(), trees, times=call.times, layouts=call.layouts)
        for yard in dict.fromkeys(yards)
    }
    print("\n".join(table(rows)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
