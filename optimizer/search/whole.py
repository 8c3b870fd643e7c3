"""Questions to the whole model: a bound over all layouts, and whether anything fits at all."""

import threading

from optimizer.instance import Instance
from optimizer.model import build_model, whole_scope
from optimizer.search.solve import Answer, Effort, hint, solve
from optimizer.search.state import State


def bound_over_all(instance: Instance, start: State, *, seconds: float, stop: threading.Event) -> Answer:
    """Improve the bound for a while, from a good layout; the order loss is not in it, so it is a floor."""
    built = build_model(instance, whole_scope(instance))
    hint(built, start)
    return solve(built, Effort(workers=2, wall_s=seconds), stop=stop)


def anything_fits(instance: Instance, *, seconds: float, stop: threading.Event) -> Answer:
    """Whether the model has any layout. "Nothing fits" is believed only when two differently set up solves say so."""
    scope = whole_scope(instance)
    first = solve(
        build_model(instance, scope, with_objective=False), Effort(wall_s=seconds, deterministic_s=1e9), stop=stop
    )
    if first.verdict != "infeasible":
        return first
    again = Effort(wall_s=seconds, deterministic_s=1e9, seed=1, presolve=False)
    second = solve(build_model(instance, scope, with_objective=False), again, stop=stop)
    return second if second.verdict == "infeasible" else Answer("undecided", None, None, None)
