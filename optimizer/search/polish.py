"""The best layout of one arrangement, with its proof."""

import threading
from dataclasses import dataclass

from optimizer.model import arrangement_scope, build_model
from optimizer.search.board import Board
from optimizer.search.connected import is_connected
from optimizer.search.explore import key_of
from optimizer.search.solve import Effort, hint, solve
from optimizer.search.state import State
from optimizer.search.value import modelled_value_of, value_of

POLISH = Effort(workers=1, deterministic_s=0.8, wall_s=30.0, is_small=True)


@dataclass(frozen=True, slots=True)
class Polished:
    """A state with its objective and the bound of its arrangement, in cents."""

    state: State
    objective: int
    bound: int

    @property
    def is_proven(self) -> bool:
        """Whether nothing better exists with these rooms, of these sizes in any turn, on these sides of each other."""
        return self.bound >= self.objective


def unpolished(board: Board, state: State, *, bound: int = 0) -> Polished:
    """A state as it is, with what is known of its arrangement: no loss is below nothing."""
    objective = modelled_value_of(board, state)
    return Polished(state, objective, min(objective, bound))


def polish(board: Board, state: State, *, stop: threading.Event) -> Polished:
    """Move the rooms to the best of their arrangement; the state as it was where the solver's one is no better.

    Which is better the explorer's count says, edges that nearly meet included; the proof speaks of the model's
    objective. Sight and walkability are asked of the solver's layout afterwards: where it breaks them the bound still
    holds.
    """
    instance = board.instance
    built = build_model(instance, arrangement_scope(instance, *key_of(board, state)))
    hint(built, state)
    answer = solve(built, POLISH, stop=stop)
    if answer.state is None or answer.bound is None:
        return unpolished(board, state)
    is_better = value_of(board, answer.state) <= value_of(board, state) and is_connected(instance, answer.state)
    return unpolished(board, answer.state if is_better else state, bound=answer.bound)
