"""Where rooms may stand in a tour that follows an idea: a guide, in no count and no bound."""

from collections.abc import Mapping
from dataclasses import dataclass

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.problem import State


@dataclass(frozen=True, eq=False)
class Ground:
    """Lower left corners that an idea leaves to rooms, by room and variant; the others stand anywhere."""

    idea: str
    cells: Mapping[tuple[int, int], Cells]

    def kept_of(self, state: State) -> State:
        """The state without the rooms that stand where the idea does not have them."""
        return tuple(
            None if spot is not None and not self._holds(room, spot.variant, spot.x, spot.y) else spot
            for room, spot in enumerate(state)
        )

    def _holds(self, room: int, variant: int, x: int, y: int) -> bool:
        cells = self.cells.get((room, variant))
        return cells is None or bool(cells[y, x])
