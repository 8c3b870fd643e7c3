"""The explorer: layouts by ruin and recreate, over tables made once."""

from optimizer.engine.explorer.board import Board, board_of
from optimizer.engine.explorer.explore import Explorer, Tour
from optimizer.engine.explorer.ground import Ground
from optimizer.engine.explorer.insertion import best_spot
from optimizer.engine.explorer.limits import Limits
from optimizer.engine.explorer.mended import mended
from optimizer.engine.explorer.pool import Pool
from optimizer.engine.explorer.refusals import Refusals
from optimizer.engine.explorer.residuals import Residuals
from optimizer.engine.explorer.value import value_of

__all__ = [
    "Board",
    "Explorer",
    "Ground",
    "Limits",
    "Pool",
    "Refusals",
    "Residuals",
    "Tour",
    "best_spot",
    "board_of",
    "mended",
    "value_of",
]
