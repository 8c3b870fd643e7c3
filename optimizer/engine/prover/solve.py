"""Ask CP-SAT, and say what it said: nothing is read from a solver that has no solution."""

import math
import threading
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, Literal

from ortools.sat.python import cp_model

from optimizer.engine.model import LayoutModel
from optimizer.engine.problem import Spot, State

_EVEN: Final = 1e-6
Verdict = Literal["optimal", "feasible", "infeasible", "undecided"]


class SolverFault(Exception):  # noqa: N818 - a fault is what it is called
    """The solver refused a model, or contradicts itself; the model's text, which repeats it, stands in a note."""

    def __init__(self, words: str, model: str = "") -> None:
        super().__init__(words)
        self.add_note(model)


@dataclass(frozen=True, slots=True)
class Answer:
    """What the solver said; `objective` and `state` are None without a solution, `bound` without a proof of one.

    `work_s` is the solver's deterministic time.
    """

    verdict: Verdict
    state: State | None
    objective: int | None
    bound: int | None
    work_s: float = 0.0


@dataclass(frozen=True, slots=True)
class Effort:
    """How hard to try. One worker with a deterministic limit repeats exactly; more workers do not.

    `subsolvers`: names of the solver's own searches, all of them where it is empty. `cutoff` [cents]: only what is
    cheaper is wanted. `log` takes each line of the solver's log.
    """

    workers: int = 1
    deterministic_s: float = 10.0
    wall_s: float = 60.0
    seed: int = 0
    presolve: bool = True
    linearization: int = 1
    """How much of a linear relaxation: 0 is none, which proves sooner where tables have done its work."""
    presolve_rounds: int | None = None
    subsolvers: tuple[str, ...] = ()
    cutoff: int | None = None
    log: Callable[[str], None] | None = None


def solve(built: LayoutModel, effort: Effort, *, stop: threading.Event | None = None) -> Answer:
    """Solve in this thread; `stop` ends it early with what it has.

    Raises SolverFault where the model is refused, or a bound passes the objective.
    """
    if effort.cutoff is not None:
        built.model.add(built.objective <= effort.cutoff - 1)
    solver = _solver(effort)
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


def _solver(effort: Effort) -> cp_model.CpSolver:
    solver = cp_model.CpSolver()
    parameters = solver.parameters
    parameters.num_workers = effort.workers
    parameters.random_seed = effort.seed
    parameters.max_time_in_seconds = effort.wall_s
    parameters.max_deterministic_time = effort.deterministic_s
    parameters.catch_sigint_signal = False
    parameters.cp_model_presolve = effort.presolve
    parameters.subsolvers.extend(effort.subsolvers)
    parameters.linearization_level = effort.linearization
    if effort.presolve_rounds is not None:
        parameters.max_presolve_iterations = effort.presolve_rounds
    if effort.log is not None:
        parameters.log_search_progress = True
        parameters.log_to_stdout = False
        solver.log_callback = effort.log
    return solver


def _watch(solver: cp_model.CpSolver, stop: threading.Event) -> threading.Event:
    done = threading.Event()

    def wait() -> None:
        while not done.wait(0.05):
            if stop.is_set():
                solver.stop_search()

    threading.Thread(target=wait, daemon=True).start()
    return done


def _answer(built: LayoutModel, solver: cp_model.CpSolver, status: cp_model.CpSolverStatus) -> Answer:
    # Rounded, since threads add up in any order: what is decided by work must not hang on the last bit.
    work = round(float(solver.response_proto.deterministic_time), 6)
    if status == cp_model.MODEL_INVALID:
        raise SolverFault(f"the solver refuses the model: {built.model.validate()}", str(built.model.proto))
    if status == cp_model.INFEASIBLE:
        return Answer("infeasible", None, None, None, work)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Answer("undecided", None, None, _open_bound(built, solver), work)
    state = tuple(None if room is None else _spot(room, solver) for room in built.rooms)
    objective, bound = round(solver.objective_value), _floor(solver.best_objective_bound)
    if built.terms and bound > objective:
        raise SolverFault(f"the solver's bound {bound} passes its objective {objective}", str(built.model.proto))
    return Answer("optimal" if status == cp_model.OPTIMAL else "feasible", state, objective, bound, work)


def _open_bound(built: LayoutModel, solver: cp_model.CpSolver) -> int | None:
    """What is proven of a model of which no layout was found: 0 where the solver knows nothing."""
    return max(0, _floor(solver.best_objective_bound)) if built.terms else None


def _floor(bound: float) -> int:
    """A bound in whole cents, never above what the solver says but for the rounding of its own numbers."""
    return math.floor(bound + _EVEN)


def _spot(room: object, solver: cp_model.CpSolver) -> Spot | None:
    taken = next((v for v, literal in room.literals.items() if solver.boolean_value(literal)), None)  # type: ignore[attr-defined]
    return None if taken is None else Spot(taken, solver.value(room.x), solver.value(room.y))  # type: ignore[attr-defined]
