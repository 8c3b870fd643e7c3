"""The best layouts that the explorer passed, one of each arrangement."""

from dataclasses import dataclass, field

from optimizer.engine.problem import State
from optimizer.engine.problem.arrangement import Key


@dataclass
class Pool:
    """The best state of every arrangement seen, with its count less what was learned, by its key."""

    best: dict[Key, tuple[int, State]] = field(default_factory=dict)
    seen: set[Key] = field(default_factory=set)

    def ranked(self) -> list[tuple[int, State]]:
        """States from best to worst; ties by where rooms stand, so that the order never depends on the clock."""
        return sorted(self.best.values(), key=lambda entry: (entry[0], _places(entry[1])))


def _places(state: State) -> tuple[tuple[int, int, int], ...]:
    return tuple((-1, 0, 0) if spot is None else (spot.variant, spot.x, spot.y) for spot in state)
