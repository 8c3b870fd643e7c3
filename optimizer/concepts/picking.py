"""Which of the layouts found the judge sees next."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice
from typing import Final

from optimizer.concepts.ranking import LEAST_DIFFERENCE
from optimizer.engine.explorer import Explorer
from optimizer.engine.portfolio import Purse
from optimizer.engine.problem import State
from optimizer.engine.problem.alike import Archive

LOOKED_AT: Final = 60
"""States of one kind that are looked at for something new; further ones are worse than all of these."""


@dataclass
class Picker:
    """What was picked already, and with it what is new: `seen` are all states, `known` those that hold, to compare."""

    explorer: Explorer
    purse: Purse
    known: Archive
    seen: set[State] = field(default_factory=set)
    _turn: int = 0

    def pick(self, count: int) -> tuple[State, ...]:
        """So many states at most: the best, the best with every room, and new ideas with every room and without."""
        ranked = self._ranked()
        whole = [state for state in ranked if all(state)]
        part = [state for state in ranked if not all(state)]
        kinds = [iter(ranked), self._new(whole), iter(whole), self._new(self._of_one_program(part))]
        picked: list[State] = []
        while kinds and len(picked) < count:
            kind = kinds.pop(0)
            state = next((state for state in kind if state not in self.seen), None)
            if state is not None:
                self.seen.add(state)
                picked.append(state)
                kinds.append(kind)
        return tuple(picked)

    def _ranked(self) -> list[State]:
        """States by what they likely cost, those last that will likely pass the ceiling, without what was refused."""
        board, refusals = self.explorer.board, self.explorer.refusals
        counted = [
            (self._is_dear(state), value + board.estimate(state), number, state)
            for number, (value, state) in enumerate(self.explorer.pool.ranked())
            if state not in self.seen and any(state)
        ]
        return [state for *_, state in sorted(counted) if not refusals.forbid(board.problem, state)]

    def _is_dear(self, state: State) -> bool:
        budget = self.explorer.board.problem.budget
        if budget is None or budget.most is None:
            return False
        return self.purse.of_rooms(state) + self.purse.likely() > budget.most

    def _new(self, states: Sequence[State]) -> Iterator[State]:
        """Those that differ clearly from all that hold."""
        return (s for s in islice(states, LOOKED_AT) if self.known.least_difference(s) >= LEAST_DIFFERENCE)

    def _of_one_program(self, states: Sequence[State]) -> list[State]:
        """States that lack the same rooms, another program each time."""
        programs = list(dict.fromkeys(tuple(spot is not None for spot in state) for state in states))
        if not programs:
            return []
        self._turn += 1
        chosen = programs[self._turn % min(4, len(programs))]
        return [state for state in states if tuple(spot is not None for spot in state) == chosen]
