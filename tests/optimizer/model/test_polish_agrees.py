"""The model and the explorer count alike."""

import threading

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.instance import build_instance
from optimizer.scenario import load_scenario
from optimizer.search import Pool, Tour, board_of, explore, key_of, modelled_value_of, polish, value_of


@pytest.mark.parametrize("name", ["fernhollow-court", "thimble-yard"])
def test_polished_value_is_the_models_own(name):
    """A proven polish is no worse than where it began, keeps the arrangement's rooms, and the explorer's count of it
    is the solver's optimum."""
    scenario = load_scenario(f"scenarios/{name}.yaml")
    board = board_of(build_instance(scenario, sized_rooms(scenario.brief), book_for(scenario.currency)))
    pool = Pool()
    explore(board, pool, Tour(25, seed=1), stop=threading.Event())
    value, state = pool.ranked()[0]
    polished = polish(board, state, stop=threading.Event())
    assert polished.objective == modelled_value_of(board, polished.state)
    assert value_of(board, polished.state) <= value == value_of(board, state)
    assert polished.bound <= polished.objective
    assert key_of(board, polished.state) == key_of(board, state)
