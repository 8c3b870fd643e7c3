"""What two rooms that stand cost each other."""

import numpy as np

from optimizer.engine.explorer.board import Board
from optimizer.engine.explorer.sight import loss_of_sight, sightings
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Spot


def between(board: Board, one: tuple[int, Spot], other: tuple[int, Spot]) -> int:
    """Loss between two placed rooms, each as its number and spot [cents]."""
    (a, here), (b, there) = one, other
    loss = board.stamp(a, here.variant, b, there.variant).at(here.x - there.x, here.y - there.y)
    if loss < FORBIDDEN and board.problem.pair(a, b).asks:
        at = np.array([here.x]), np.array([here.y])
        looks = sightings(board.problem, a, here.variant, [other])
        loss += sum(int(loss_of_sight(board.problem, look, *at)[0]) for look in looks)
    return loss
