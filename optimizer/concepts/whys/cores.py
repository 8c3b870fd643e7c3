"""Of all that binds a part that cannot be kept together, from which nothing can be let go: proven, not guessed."""

import threading
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from optimizer.concepts.case import Case
from optimizer.concepts.whys.bindings import GUESTS, NOTHING_ASKED, OF_THE_SET, Asked, Binding, bindings_of, problem_of
from optimizer.concepts.whys.shrink import smallest
from optimizer.concepts.whys.trying import placeless_rooms
from optimizer.engine.prover import anything_fits

SOLVE_S = 2.5
"""Time of one solve, of which a proof takes two: what it does not decide is taken as if anything might fit."""
LEAST_S = 0.2
"""With less time left nothing is asked any more."""


@dataclass(frozen=True, slots=True)
class Core:
    """What cannot be kept together, without what was asked for; `is_least` where each one of it was let go."""

    bindings: tuple[Binding, ...]
    is_least: bool


class Cores:
    """Asks of one case what cannot be kept together, as long as there is time."""

    def __init__(self, case: Case, *, until: float, stop: threading.Event) -> None:
        self._case, self._until, self._stop = case, until, stop
        self._known: dict[frozenset[Binding], bool] = {}
        self.is_late = False

    def fits_nothing(self, kept: Sequence[Binding]) -> bool:
        """Whether it is proven, by two solves that are set up differently, that nothing keeps all of this."""
        key = frozenset(kept)
        if key not in self._known:
            left = self._until - time.monotonic()
            self.is_late = self.is_late or left <= LEAST_S or self._stop.is_set()
            if self.is_late:
                return False
            self._known[key] = self._proven(kept, min(SOLVE_S, left / 2))
        return self._known[key]

    def core(self, asked: Asked = NOTHING_ASKED) -> Core | None:
        """What cannot be kept with what is asked for; None where that is not proven."""
        bindings = bindings_of(self._case, asked=asked)
        fixed = tuple(one for one in bindings if one.is_asked)
        members = tuple(one for one in bindings if not one.is_asked)
        parts = (part for part in _parts(members) if self.fits_nothing((*fixed, *part)))
        start = next(parts, None)
        if start is None:
            return None
        least = smallest(start, lambda kept: self.fits_nothing((*fixed, *kept)))
        # The grid ends with the yard: what is not on it by itself already lies outside.
        outside = tuple(one for one in members if one.rule == "inside_setbacks")
        return Core(least or outside, is_least=not self.is_late)

    def _proven(self, kept: Sequence[Binding], seconds: float) -> bool:
        problem = problem_of(self._case, kept)
        if not problem.rooms:
            return False
        # A table without a place is no work for a solver, and as sure.
        if placeless_rooms(problem):
            return True
        return anything_fits(problem, seconds=seconds, stop=self._stop).verdict == "infeasible"


def _parts(members: Sequence[Binding]) -> Iterator[tuple[Binding, ...]]:
    """Parts of what binds that are asked first, since they are sooner asked: sums alone know no places, and only where
    the guests are asked for are there rooms that may be left out. The last part is all of it.
    """
    sums = [one for one in members if one.required or one.rule in OF_THE_SET]
    yield tuple(sums)
    yield tuple(one for one in members if one.rule not in OF_THE_SET)
    yield tuple(one for one in members if one.rule not in GUESTS)
    yield tuple(members)
