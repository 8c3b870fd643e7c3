"""The best layouts that the explorer passed, one of each arrangement."""

from dataclasses import dataclass, field

from optimizer.engine.explorer.board import Board
from optimizer.engine.explorer.connected import is_connected
from optimizer.engine.problem import State
from optimizer.engine.problem.arrangement import Key, key_of


@dataclass
class Pool:
    """The best state of every arrangement seen, with its count less what was learned, by its key."""

    best: dict[Key, tuple[int, State]] = field(default_factory=dict)
    seen: set[Key] = field(default_factory=set)

    def take(self, board: Board, state: State, value: int) -> None:
        """Keep a state of this value, with what was learned in it, if it is the best of its arrangement and joined."""
        key = key_of(board.problem, state)
        self.seen.add(key)
        known = self.best.get(key)
        is_best = known is None or known[0] + board.estimate(known[1]) > value
        if is_best and is_connected(board.problem, state):
            self.best[key] = (value - board.estimate(state), state)

    def ranked(self) -> list[tuple[int, State]]:
        """States from best to worst; ties by where rooms stand, so that the order never depends on the clock."""
        return sorted(self.best.values(), key=lambda entry: (entry[0], _places(entry[1])))


def _places(state: State) -> tuple[tuple[int, int, int], ...]:
    return tuple((-1, 0, 0) if spot is None else (spot.variant, spot.x, spot.y) for spot in state)
