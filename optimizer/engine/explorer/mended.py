"""A layout of another problem as a start in this one: rooms held at a place first, then all that go with them."""

from optimizer.engine.explorer.between import between
from optimizer.engine.explorer.board import Board
from optimizer.engine.grid.held import held_place
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Spot, State


def mended(board: Board, state: State) -> State:
    """The state with held rooms at their places, less the rooms that cannot stand beside those before them."""
    problem, spots = board.problem, list(state)
    is_held = [held_place(problem.context, room.name) is not None for room in problem.rooms]
    for room, held in enumerate(is_held):
        if held and spots[room] is None:
            spots[room] = _only_spot(board, room)
    taken: list[tuple[int, Spot]] = []
    for room in sorted(range(len(spots)), key=lambda room: not is_held[room]):
        spot = spots[room]
        if spot is not None and all(between(board, (room, spot), other) < FORBIDDEN for other in taken):
            taken.append((room, spot))
    kept = dict(taken)
    return tuple(kept.get(room) for room in range(len(spots)))


def _only_spot(board: Board, room: int) -> Spot | None:
    """The place of the cheapest variant that may stand where the room is held."""
    if not board.by_least[room]:
        return None
    variant = board.by_least[room][0]
    window = board.windows[room][variant]
    assert window is not None
    return Spot(variant, window.column, window.row)
