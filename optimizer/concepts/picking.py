"""Which of the layouts found the judge sees next."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice
from typing import Final

from optimizer.concepts.ranking import LEAST_DIFFERENCE
from optimizer.engine.explorer import Explorer, Pool
from optimizer.engine.portfolio import Purse
from optimizer.engine.problem import State, is_whole
from optimizer.engine.problem.alike import Archive

TURNS: Final = ("best", "new", "whole", "in part", "of an idea", "best", "new", "whole")
"""Which kind of layout the judge sees next, in turn: the best, what is new with every room, the best with every room,
what is new without one, and the best of the idea that the judge has seen least of.
"""
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
    _programs: int = 0
    _given: Counter[str] = field(default_factory=Counter)

    def best(self) -> tuple[State, ...]:
        """The best that the judge has not seen; none where there is no other."""
        states = self._ranked(self.explorer.pool)[:1]
        self.seen.update(states)
        return tuple(states)

    def pick(self, count: int) -> tuple[State, ...]:
        """So many states at most, of each kind in its turn; the turns go on where they were left."""
        ranked = self._ranked(self.explorer.pool)
        whole = [state for state in ranked if is_whole(self.explorer.board.problem, state)]
        part = [state for state in ranked if not is_whole(self.explorer.board.problem, state)]
        kinds = {
            "best": iter(ranked),
            "new": self._new(whole),
            "whole": iter(whole),
            "in part": self._new(self._of_one_program(part)),
            "of an idea": self._of_ideas(),
        }
        picked: list[State] = []
        while kinds and len(picked) < count:
            kind = TURNS[self._turn % len(TURNS)]
            self._turn += 1
            state = next((state for state in kinds.get(kind, ()) if state not in self.seen), None)
            if state is None:
                kinds.pop(kind, None)
            else:
                self.seen.add(state)
                picked.append(state)
        return tuple(picked)

    def _of_ideas(self) -> Iterator[State]:
        """The best of each idea's own in turn."""
        own = {name: iter(self._ranked(pool)) for name, pool in self.explorer.of_ideas.items()}
        while own:
            name = min(own, key=lambda name: self._given[name])
            state = next(own[name], None)
            if state is None:
                del own[name]
            elif state not in self.seen:
                self._given[name] += 1
                yield state

    def _ranked(self, pool: Pool) -> list[State]:
        """States of a pool by what they likely cost, without what was refused; last what likely passes the ceiling."""
        board, refusals = self.explorer.board, self.explorer.refusals
        counted = [
            (self._is_dear(state), value + board.estimate(state), number, state)
            for number, (value, state) in enumerate(pool.ranked())
            if state not in self.seen and any(state)
        ]
        return [state for *_, state in sorted(counted) if not refusals.forbid(board.problem, state)]

    def _is_dear(self, state: State) -> bool:
        budget = self.explorer.board.problem.budget
        if budget is None or budget.most is None:
            return False
        return self.purse.of_rooms(state) + self.purse.likely(state) > budget.most

    def _new(self, states: Sequence[State]) -> Iterator[State]:
        """Those that differ clearly from all that hold."""
        return (s for s in islice(states, LOOKED_AT) if self.known.least_difference(s) >= LEAST_DIFFERENCE)

    def _of_one_program(self, states: Sequence[State]) -> list[State]:
        """States that lack the same rooms, another program each time."""
        programs = list(dict.fromkeys(tuple(spot is not None for spot in state) for state in states))
        if not programs:
            return []
        self._programs += 1
        chosen = programs[self._programs % min(4, len(programs))]
        return [state for state in states if tuple(spot is not None for spot in state) == chosen]
