"""The layout nearest to where rooms are wanted, one after the other as the judge refuses them."""

import threading
from collections.abc import Sequence

from optimizer.engine.model.nearest import Wanted, forbid, nearest_model, set_aside
from optimizer.engine.problem import Problem, Spot, State
from optimizer.engine.prover.solve import Answer, Effort, hint, solve

_NO_LIMIT_S = 1e9


class Nearest:
    """Gives layouts by rising distance. `is_sound`: nothing was forbidden but what is known to break a rule, so that
    what the solver proves holds for every layout of the grid.
    """

    def __init__(self, problem: Problem, wanted: Sequence[Wanted]) -> None:
        self.problem, self.is_sound = problem, True
        self._built = nearest_model(problem, wanted)

    def next(self, *, seconds: float, stop: threading.Event) -> Answer:
        """The nearest of all that is not forbidden, if the time is enough."""
        effort = Effort(wall_s=seconds, deterministic_s=_NO_LIMIT_S)
        return solve(self._built, effort, stop=stop)

    def refuse(self, state: State) -> None:
        """Forbid one layout, and none that has a room more."""
        missing = [room for room, spot in enumerate(state) if spot is None]
        forbid(self._built, _spots(state, range(len(state))), within=0, without=missing)
        self._from(state)

    def keep_off(self, state: State, blamed: Sequence[int], *, within: int) -> None:
        """Forbid that the blamed rooms, or where none is blamed all of them, stand together near to where they stood.

        Most of these layouts break the same rule, and some may not.
        """
        self.is_sound = False
        rooms = [room for room in blamed if state[room] is not None] or range(len(state))
        forbid(self._built, _spots(state, rooms), within=within)
        self._from(state)

    def save(self, state: State, cents: int) -> None:
        """Ask for rooms that cost so much less than those of a layout: what ways cost besides passes the ceiling."""
        budget = self.problem.budget
        if budget is None:
            return
        self.is_sound = False
        used = sum(budget.uses[room][spot.variant] for room, spot in _spots(state, range(len(state))))
        set_aside(self._built, budget, used - max(1, cents))

    def _from(self, state: State) -> None:
        self._built.model.clear_hints()  # type: ignore[no-untyped-call]
        hint(self._built, state)


def _spots(state: State, rooms: Sequence[int]) -> list[tuple[int, Spot]]:
    return [(room, spot) for room in rooms if (spot := state[room]) is not None]
