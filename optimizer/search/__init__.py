"""Find layouts: explore, polish with proof, bound; and say when nothing fits."""

from optimizer.search.board import Board, board_of
from optimizer.search.explore import Pool, Tour, explore, key_of
from optimizer.search.insertion import likely_cost_of
from optimizer.search.polish import Polished, polish, unpolished
from optimizer.search.solve import Answer
from optimizer.search.state import State, layout_of, posed_layout_of, state_of
from optimizer.search.tours import run_tours, take_first_tour
from optimizer.search.value import modelled_value_of, value_of
from optimizer.search.whole import anything_fits, bound_over_all

__all__ = [
    "Answer",
    "Board",
    "Polished",
    "Pool",
    "State",
    "Tour",
    "anything_fits",
    "board_of",
    "bound_over_all",
    "explore",
    "key_of",
    "layout_of",
    "likely_cost_of",
    "modelled_value_of",
    "polish",
    "posed_layout_of",
    "run_tours",
    "state_of",
    "take_first_tour",
    "unpolished",
    "value_of",
]
