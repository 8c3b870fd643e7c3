"""The best layout of one arrangement, with its proof."""

import threading
from dataclasses import dataclass

from optimizer.engine.explorer import Board, Limits, value_of
from optimizer.engine.explorer.connected import is_connected
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import State, modelled_value
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover.solve import Effort, SolverFault, hint, solve

POLISH = Effort(workers=1, deterministic_s=0.8, wall_s=30.0, linearization=0, presolve_rounds=1)


@dataclass(frozen=True, slots=True)
class ArrangementProof:
    """What the model says of a state: its objective, and what it proved of the state's arrangement, in cents.

    `fingerprint` is that of the arrangement's model; None where the solver has not been asked.
    """

    state: State
    objective: int
    bound: int
    fingerprint: str | None = None

    @property
    def is_proven(self) -> bool:
        """Whether nothing better exists with these rooms, of these sizes in any turn, on these sides of each other."""
        return self.bound >= self.objective


def unproven(board: Board, state: State) -> ArrangementProof:
    """A state as it is: no loss is below nothing."""
    return ArrangementProof(state, modelled_value(board.problem, state), 0)


def polish(board: Board, state: State, *, stop: threading.Event) -> ArrangementProof:
    """Move the rooms to the best of their arrangement; the state as it was where the solver's one is no better.

    Which is better the explorer's count says, near misses included; the proof speaks of the model's objective. Sight
    and walkability are asked of the solver's layout afterwards: where it breaks them the bound still holds. Raises
    SolverFault where the bound passes what the state itself counts, unless a rule is broken in it.
    """
    problem, limits = board.problem, Limits.of(board.problem)
    if stop.is_set():  # a model takes time to build, too
        return unproven(board, state)
    built = build_model(problem, arrangement_scope(problem, key_of(problem, state)))
    fingerprint = built.fingerprint
    hint(built, state)
    answer = solve(built, POLISH, stop=stop)
    if answer.state is None or answer.bound is None:
        return unproven(board, state)
    counts = [value_of(board, limits, found, learned=False) for found in (answer.state, state)]
    is_better = counts[0] <= counts[1]
    kept = answer.state if is_better and is_connected(problem, answer.state) else state
    objective = modelled_value(problem, kept)
    least = min(objective, modelled_value(problem, state)) if counts[1] < FORBIDDEN else objective
    if answer.bound > least:
        raise SolverFault(f"a bound of {answer.bound} for a layout that counts {least}", str(built.model.proto))
    return ArrangementProof(kept, objective, answer.bound, fingerprint)
