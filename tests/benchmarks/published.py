"""Solve published layout instances with the project's own engine, and hold the answers against the published ones.

`python -m tests.benchmarks.published FILE... --seconds S [--json FILE]`. Exit status 1 if an objective beats the target,
a bound passes it, or one called proven misses it. The target is `grid_optimum` where the file has one, else
`best_known`. Each file names its source.
"""

import argparse
import json
import sys
import threading
import time
from dataclasses import asdict, dataclass
from pathlib import Path

from optimizer.engine.problem import Problem
from optimizer.engine.prover import BranchAndBound, Budget, anything_fits
from tests.benchmarks.published_instance import SCALE, problem_of

ROUNDING = 1e-6
WORKERS = 2


@dataclass(frozen=True)
class Row:
    """One instance's answer, in the file's own units."""

    instance: str
    rooms: int
    objective: float | None
    bound: float | None
    best_known: float | None
    gap: float | None
    seconds: float
    status: str


def solved(data: dict, seconds: float) -> Row:
    """Answer of the engine to one instance."""
    began = time.monotonic()
    objective, bound, status = {"place": _placed, "pack": _packed, "least_box": _least_box}[data["problem"]](
        data, seconds
    )
    gap = None if objective is None or bound is None or objective == 0 else (objective - bound) / objective
    target = data.get("grid_optimum", data.get("best_known"))
    spent = round(time.monotonic() - began, 2)
    return Row(data["name"], len(data["rooms"]), objective, bound, target, gap, spent, status)


def wrong(row: Row) -> str | None:
    """What contradicts the published answer, or None."""
    if row.best_known is None:
        return None if row.status != "infeasible" else "called impossible, and it fits"
    if row.objective is not None and row.objective < row.best_known - ROUNDING:
        return "objective beats the target"
    if row.bound is not None and row.bound > row.best_known + ROUNDING:
        return "bound passes the target"
    if row.status == "proven" and abs((row.objective or 0.0) - row.best_known) > ROUNDING:
        return "called proven, and misses the target"
    return None


def _placed(data: dict, seconds: float) -> tuple[float | None, float | None, str]:
    """Least sum of flow x (|dx| + |dy|), centre to centre."""
    problem = problem_of(data, data["container"])
    proof = BranchAndBound(problem, Budget(_alarm(seconds), workers=WORKERS)).run()
    if proof.state is None:
        return None, None, _fits(problem, seconds)
    status = "proven" if proof.is_proven else "bounded"
    return _unscaled(data, proof.objective), _unscaled(data, proof.bound), status


def _packed(data: dict, seconds: float) -> tuple[float | None, float | None, str]:
    status = _fits(problem_of(data, data["container"]), seconds)
    return None, None, status


def _least_box(data: dict, seconds: float) -> tuple[float | None, float | None, str]:
    """Least area of a box: boxes by rising area, until one holds all; the bound is the first that was not decided."""
    until = time.monotonic() + seconds
    longest = max(max(size) for size in data["rooms"])
    area = sum(width * depth for width, depth in data["rooms"])
    bound, most = None, sum(max(size) for size in data["rooms"])
    while time.monotonic() < until:
        boxes = [(area // h, h) for h in range(longest, int(area**0.5) + 1) if area % h == 0 and area // h <= most]
        for width, height in boxes:
            status = _fits(problem_of(data, {"rectangle": [width, height]}), until - time.monotonic())
            if status == "fits":
                return area, area if bound is None else bound, "proven" if bound is None else "bounded"
            if status == "undecided" and bound is None:
                bound = area
        area += 1
    return None, bound, "undecided"


def _fits(problem: Problem, seconds: float) -> str:
    verdict = anything_fits(problem, seconds=max(0.1, seconds), stop=threading.Event()).verdict
    return {"optimal": "fits", "feasible": "fits", "infeasible": "infeasible", "undecided": "undecided"}[verdict]


def _unscaled(data: dict, value: int) -> float:
    return value / SCALE * data["grid"] / 2


def _alarm(seconds: float) -> threading.Event:
    event = threading.Event()
    timer = threading.Timer(seconds, event.set)
    timer.daemon = True
    timer.start()
    return event


def table(rows: list[Row]) -> str:
    """Rows as text, one a line, under a heading."""
    lines = [
        f"{'instance':28}{'rooms':>6}{'objective':>12}{'bound':>12}{'best known':>12}{'gap':>8}{'seconds':>9}  status"
    ]
    for row in rows:
        figures = ("-" if value is None else f"{value:,.2f}" for value in (row.objective, row.bound, row.best_known))
        gap = "-" if row.gap is None else f"{row.gap:.1%}"
        objective, bound, best = figures
        lines.append(
            f"{row.instance:28}{row.rooms:>6}{objective:>12}{bound:>12}{best:>12}{gap:>8}{row.seconds:>9.2f}  {row.status}"
        )
    return "\n".join(lines)


def main(arguments: list[str] | None = None) -> int:
    """Solve every file and print the table; 1 if any answer contradicts the published one."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("files", nargs="+", type=Path)
    parser.add_argument("--seconds", type=float, default=20.0)
    parser.add_argument("--json", type=Path)
    call = parser.parse_args(arguments)
    rows = [solved(json.loads(path.read_text()), call.seconds) for path in call.files]
    print(table(rows))
    faults = [f"{row.instance}: {fault}" for row in rows if (fault := wrong(row))]
    print("\n".join(faults), file=sys.stderr)
    if call.json:
        call.json.write_text(json.dumps([asdict(row) for row in rows], indent=1))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
