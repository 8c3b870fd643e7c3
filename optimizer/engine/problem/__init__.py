"""The whole-number problem of a yard and a brief: built once, read by explorer and model."""

from optimizer.engine.problem.build import barred_places, build_problem, sizes_of
from optimizer.engine.problem.buildable import buildable_sqft
from optimizer.engine.problem.count import modelled_losses, modelled_value, stamp_losses
from optimizer.engine.problem.problem import Guide, Problem, ProblemRoom, RoomPair
from optimizer.engine.problem.state import (
    Spot,
    State,
    is_later,
    is_whole,
    layout_of,
    posed_layout_of,
    rect_of,
    state_of,
    what_fits,
)

__all__ = [
    "Guide",
    "Problem",
    "ProblemRoom",
    "RoomPair",
    "Spot",
    "State",
    "barred_places",
    "build_problem",
    "buildable_sqft",
    "is_later",
    "is_whole",
    "layout_of",
    "modelled_losses",
    "modelled_value",
    "posed_layout_of",
    "rect_of",
    "sizes_of",
    "stamp_losses",
    "state_of",
    "what_fits",
]
