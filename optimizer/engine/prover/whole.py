"""A question to the whole model: whether anything fits at all."""

import threading

from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.problem import Problem
from optimizer.engine.prover.solve import Answer, Effort, solve

_NO_LIMIT_S = 1e9


def anything_fits(problem: Problem, *, seconds: float, stop: threading.Event) -> Answer:
    """Whether the model has any layout. "Nothing fits" is believed only when two differently set up solves say so."""
    scope = whole_scope(problem)
    first = solve(
        build_model(problem, scope, with_objective=False),
        Effort(wall_s=seconds, deterministic_s=_NO_LIMIT_S),
        stop=stop,
    )
    if first.verdict != "infeasible":
        return first
    again = Effort(wall_s=seconds, deterministic_s=_NO_LIMIT_S, seed=1, presolve=False)
    second = solve(build_model(problem, scope, with_objective=False), again, stop=stop)
    return second if second.verdict == "infeasible" else Answer("undecided", None, None, None)
