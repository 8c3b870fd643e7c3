"""Ask CP-SAT, and say what it said: nothing is read from a solver that has no solution."""

import threading
from dataclasses import dataclass
from typing import Literal

from ortools.sat.python import cp_model

from optimizer.model import LayoutModel
from optimizer.search.state import Spot, State


@dataclass(frozen=True, slots=True)
class Answer:
    """What the solver said; `objective` and `state` are None without a solution, `bound` without a proof of one."""

    verdict: Literal["optimal", "feasible", "infeasible", "undecided"]
    state: State | None
    objective: int | None
    bound: int | None


@dataclass(frozen=True, slots=True)
class Effort:
    """How hard to try. One worker with a deterministic limit repeats exactly; more workers do not."""

    workers: int = 1
    deterministic_s: float = 10.0
    wall_s: float = 60.0
    seed: int = 0
    presolve: bool = True
    is_small: bool = False
    """Without the linear relaxation and with one round of presolve, which proves small models sooner."""


def solve(built: LayoutModel, effort: Effort, *, stop: threading.Event | None = None) -> Answer:
    """Solve in this thread; `stop` ends it early with what it has."""
    solver = cp_model.CpSolver()
    parameters = solver.parameters
    parameters.num_workers = effort.workers
    parameters.random_seed = effort.seed
    parameters.max_time_in_seconds = effort.wall_s
    parameters.catch_sigint_signal = False
    parameters.cp_model_presolve = effort.presolve
    if effort.is_small:
        parameters.linearization_level = 0
        parameters.max_presolve_iterations = 1
    if effort.workers == 1:
        parameters.max_deterministic_time = effort.deterministic_s
    watcher = _watch(solver, stop) if stop is not None else None
    status = solver.solve(built.model)
    if watcher is not None:
        watcher.set()
    return _answer(built, solver, status)


def hint(built: LayoutModel, state: State) -> None:
    """Give the model a layout to start from."""
    for variables, spot in zip(built.rooms, state, strict=True):
        if variables is None:
            continue
        for v, literal in variables.literals.items():
            built.model.add_hint(literal, spot is not None and spot.variant == v)
        built.model.add_hint(variables.x, 0 if spot is None else spot.x)
        built.model.add_hint(variables.y, 0 if spot is None else spot.y)


def _watch(solver: cp_model.CpSolver, stop: threading.Event) -> threading.Event:
    done = threading.Event()

    def wait() -> None:
        while not done.wait(0.05):
            if stop.is_set():
                solver.stop_search()

    threading.Thread(target=wait, daemon=True).start()
    return done


def _answer(built: LayoutModel, solver: cp_model.CpSolver, status: cp_model.CpSolverStatus) -> Answer:
    if status == cp_model.INFEASIBLE:
        return Answer("infeasible", None, None, None)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Answer("undecided", None, None, None)
    state = tuple(None if room is None else _spot(room, solver) for room in built.rooms)
    verdict: Literal["optimal", "feasible"] = "optimal" if status == cp_model.OPTIMAL else "feasible"
    return Answer(verdict, state, round(solver.objective_value), round(solver.best_objective_bound))


def _spot(room: object, solver: cp_model.CpSolver) -> Spot | None:
    variant = room.takes(solver)  # type: ignore[attr-defined]
    return None if variant is None else Spot(variant, solver.value(room.x), solver.value(room.y))  # type: ignore[attr-defined]
