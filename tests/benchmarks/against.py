"""The engine against plainer ways to the same layouts, at equal seconds on one core each.

    python -m tests.benchmarks.against --seconds 10 [FILE...]

- `engine`: the explorer's tours, then the best arrangements polished, as every search does;
- `random`: rooms in random order at random places that keep all rules, again and again, never improved;
- `model`: CP-SAT on the whole model, with no layout to start from;
- `highs`: the same model as a mixed-integer programme with big M, solved by HiGHS.

All get the problem as the model counts it, so that all have the same rules and one objective, and every answer is counted
by the same tables. Files are yards (.yaml) or published instances (.json); without any, the yards of `scenarios` and the
instances that have an objective. The last line is the shifted geometric mean of objective / best of the run, less one; where
nothing was found it counts as ten times the best. Exit status 1 where an answer breaks a rule.
"""

import argparse
import json
import math
import sys
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from optimizer.concepts.case import Case
from optimizer.engine.explorer import Board, Explorer, Limits, board_of, value_of
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.portfolio import Purse, first_tours, tour_of
from optimizer.engine.problem import Guide, Problem, Spot, State, build_problem, modelled_value
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover import polish
from optimizer.engine.prover.solve import Effort, solve
from optimizer.scenario import load_scenario
from tests.benchmarks.mixed_integer import solved_by_highs
from tests.benchmarks.published_instance import problem_of

EXPLORING = 0.6
"""Share of the engine's time before it polishes."""
STARTS = 6
SHIFT = 1.0
NOTHING_FOUND = 10.0
_NO_LIMIT_S = 1e9
ROOT = Path(__file__).parents[2]


def by_engine(problem: Problem, seconds: float) -> State | None:
    """Tours from nothing and from the best, then polishing of the best arrangements, best first."""
    began, board = time.monotonic(), board_of(problem)
    explorer, purse, stop = Explorer(board), Purse(problem), threading.Event()
    timer = threading.Timer(seconds * EXPLORING, stop.set)
    timer.start()
    for tour in first_tours(1, (), 0):
        explorer.run(tour, stop=stop)
    turn = 0
    while not stop.is_set():
        best = [state for _, state in explorer.pool.ranked()[:STARTS]]
        explorer.run(tour_of(problem, turn, seed=1, purse=purse, best=best), stop=stop)
        turn += 1
    return _polished(board, [state for _, state in explorer.pool.ranked()], began + seconds)


def at_random(problem: Problem, seconds: float) -> State | None:
    """Best of layouts that are put together at random."""
    until, board, limits = time.monotonic() + seconds, board_of(problem), Limits.of(problem)
    random, best, least = np.random.default_rng(1), None, FORBIDDEN
    while time.monotonic() < until:
        state = tuple(None for _ in problem.rooms)
        for room in random.permutation(len(state)).tolist():
            spot = _random_spot(board, limits, state, room, random)
            state = (*state[:room], spot, *state[room + 1 :])
        value = value_of(board, limits, state)
        best, least = (state, value) if value < least else (best, least)
    return best


def by_model(problem: Problem, seconds: float) -> State | None:
    """CP-SAT on the whole model, building included."""
    until = time.monotonic() + seconds
    built = build_model(problem, whole_scope(problem))
    return solve(built, Effort(wall_s=max(0.1, until - time.monotonic()), deterministic_s=_NO_LIMIT_S)).state


WAYS: dict[str, Callable[[Problem, float], State | None]] = {
    "engine": by_engine,
    "random": at_random,
    "model": by_model,
    "highs": solved_by_highs,
}


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


def mean_excess(ratios: Sequence[float]) -> float:
    """Shifted geometric mean of how much more than the best was paid, as a share of the best."""
    return math.exp(sum(math.log(ratio - 1 + SHIFT) for ratio in ratios) / len(ratios)) - SHIFT


def _polished(board: Board, states: Sequence[State], until: float) -> State | None:
    """The best once as many arrangements as there is time for have been polished."""
    best = min(states, key=lambda state: modelled_value(board.problem, state), default=None)
    alarm = threading.Event()
    timer = threading.Timer(max(0.0, until - time.monotonic()), alarm.set)
    timer.daemon = True
    timer.start()
    for state in states:
        if alarm.is_set() or best is None:
            break
        found = polish(board, state, stop=alarm)
        best = found.state if found.objective < modelled_value(board.problem, best) else best
    return best


def _random_spot(board: Board, limits: Limits, state: State, room: int, random: np.random.Generator) -> Spot | None:
    """A place of the first size, by a random order, that has any; None where the room fits nowhere."""
    others = [(other, spot) for other, spot in enumerate(state) if spot is not None]
    for v in random.permutation(sorted(limits.left_for(state, room)[0])).tolist():
        allowed = board.problem.rooms[room].allowed[v]
        table = np.where(allowed, np.int64(0), np.int64(FORBIDDEN))
        for other, spot in others:
            board.stamp(room, v, other, spot.variant).add_to(table, -spot.x, -spot.y)
        free = np.flatnonzero(table < FORBIDDEN)
        if len(free):
            y, x = divmod(int(random.choice(free)), table.shape[1])
            return Spot(v, x, y)
    return None


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
        yield f"{'mean excess over best':40}" + "".join(f"{mean_excess(own):>12.2%}" for own in ratios.values())


def main(arguments: Sequence[str] | None = None) -> int:
    """Run every way on every file and print one table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0)
    call = parser.parse_args(arguments)
    rows: dict[str, dict[str, int | None]] = {}
    for path in call.files or _files():
        problem = problem_at(path)
        rows[path.stem] = {way: objective(problem, ask(problem, call.seconds)) for way, ask in WAYS.items()}
        print(*list(table({path.stem: rows[path.stem]}))[1:2], sep="\n", file=sys.stderr, flush=True)
    print("\n".join(table(rows)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
