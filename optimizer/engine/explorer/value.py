"""The explorer's count of a whole layout: the same tables as an insertion reads, at one place of each room."""

from itertools import combinations

from optimizer.engine.explorer.between import between
from optimizer.engine.explorer.board import Board
from optimizer.engine.explorer.insertion import ABSENT_REQUIRED
from optimizer.engine.explorer.limits import Limits
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import State, rect_of


def value_of(board: Board, limits: Limits, state: State, *, learned: bool = True) -> int:
    """Loss of a state [cents]; FORBIDDEN or more where a rule that the explorer knows is broken.

    With what was `learned` of places, as an insertion counts it, or without.
    """
    problem = board.problem
    if not limits.are_kept(state):
        return FORBIDDEN
    placed = [(room, spot) for room, spot in enumerate(state) if spot is not None]
    total = problem.order.loss(rect_of(problem, room, spot) for room, spot in placed)
    for room, spot in enumerate(state):
        if spot is None:
            total += ABSENT_REQUIRED if room in limits.required else problem.rooms[room].absent_loss
        else:
            window = board.windows[room][spot.variant]
            total += FORBIDDEN if window is None else window.at(spot, learned=learned)
    return total + sum(between(board, one, other) for one, other in combinations(placed, 2))
