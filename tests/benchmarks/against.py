"""The engine against plainer ways to the same layouts, at equal seconds on one core each.

    python -m tests.benchmarks.against --seconds 10 [FILE...]

- `engine`: the explorer's tours, then the best arrangements polished, as every search does;
- `random`: rooms in random order at random places that keep all rules, again and again, never improved;
- `model`: CP-SAT on the whole model, with no layout to start from;
- `highs`: the same model as a mixed-integer programme with big M, solved by HiGHS.

All get the problem as the model counts it, so that all have the same rules and one objective, and every answer is counted
by the same tables. Files are yards (.yaml) or published instances (.json); without any, the yards of `scenarios` and the
instances that have an objective. The last line is the shifted geometric mean of objective / best of the run; nothing
found counts as ten times the best. Exit status 1 where an answer breaks a rule.
"""

import argparse
import json
import math
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from optimizer.concepts.case import Case
from optimizer.engine.explorer import Limits, board_of, value_of
from optimizer.engine.problem import Guide, Problem, State, build_problem, modelled_value
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.scenario import load_scenario
from tests.benchmarks.published_instance import problem_of
from tests.benchmarks.rivals import WAYS

SHIFT = 1.0
NOTHING_FOUND = 10.0
ROOT = Path(__file__).parents[2]


def problem_at(path: Path) -> Problem:
    """The problem of a file as the model counts it: no estimates, and nothing that the model does not know."""
    if path.suffix == ".json":
        data = json.loads(path.read_text())
        return problem_with_no_guide(problem_of(data, data["container"]))
    case = Case.of(load_scenario(path))
    return problem_with_no_guide(build_problem(case.scenario, case.rooms, case.book))


def problem_with_no_guide(problem: Problem) -> Problem:
    """What the model counts, with nothing set aside."""
    none = Guide(tuple((0,) * len(room.variants) for room in problem.rooms), 0)
    return replace(modelled_problem(problem), guide=none)


def objective(problem: Problem, state: State | None) -> int | None:
    """What the model counts of an answer [cents]; None without one. Raises ValueError where it breaks a rule."""
    if state is None:
        return None
    board, limits = board_of(problem), Limits.of(problem)
    if value_of(board, limits, state) != modelled_value(problem, state):
        raise ValueError(f"breaks a rule: {state}")
    return modelled_value(problem, state)


def shifted_mean(ratios: Sequence[float]) -> float:
    """Geometric mean of what is shifted by `SHIFT` and back, so that no single ratio decides."""
    return math.exp(sum(math.log(ratio + SHIFT) for ratio in ratios) / len(ratios)) - SHIFT


def _answers(path: Path, seconds: float, faults: list[str]) -> dict[str, int | None]:
    """Objective of each way on a file; an answer that breaks a rule is told, and counts as none."""
    problem, found = problem_at(path), dict[str, int | None]()
    for way, ask in WAYS.items():
        try:
            found[way] = objective(problem, ask(problem, seconds))
        except ValueError as fault:
            found[way] = None
            faults.append(f"{path.stem}, {way}: {fault}")
    return found


def _files() -> list[Path]:
    instances = sorted((ROOT / "tests/benchmarks/instances").glob("*.json"))
    return [*sorted((ROOT / "scenarios").glob("*.yaml")), *(p for p in instances if not p.stem.startswith("pack"))]


def table(rows: dict[str, dict[str, int | None]]) -> Iterator[str]:
    """Objectives by file and way, and the mean of each way."""
    yield f"{'file':24}{'best':>16}" + "".join(f"{way:>12}" for way in WAYS)
    ratios: dict[str, list[float]] = {way: [] for way in WAYS}
    for name, found in rows.items():
        best = min((value for value in found.values() if value is not None), default=None)
        if best is None:
            yield f"{name:24}{'nothing found':>16}"
            continue
        own = {way: NOTHING_FOUND if value is None else value / best for way, value in found.items()}
        yield f"{name:24}{best:>16,}" + "".join(
            f"{'-' if found[way] is None else f'{ratio:.4f}':>12}" for way, ratio in own.items()
        )
        for way, ratio in own.items():
            ratios[way].append(ratio)
    if any(ratios.values()):
        yield f"{'shifted geometric mean':40}" + "".join(f"{shifted_mean(own):>12.4f}" for own in ratios.values())


def main(arguments: Sequence[str] | None = None) -> int:
    """Run every way on every file and print one table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0)
    call = parser.parse_args(arguments)
    rows: dict[str, dict[str, int | None]] = {}
    faults: list[str] = []
    for path in call.files or _files():
        rows[path.stem] = _answers(path, call.seconds, faults)
    print("\n".join(table(rows)))
    print("\n".join(faults), file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
