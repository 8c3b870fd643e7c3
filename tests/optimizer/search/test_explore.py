"""The explorer: exact insertion, and the same layouts from the same seed."""

import threading

import numpy as np

from optimizer.catalogue import book_for, sized_rooms
from optimizer.instance import build_instance
from optimizer.scenario import load_scenario
from optimizer.search import Pool, Tour, board_of, explore, value_of
from optimizer.search.insertion import best_spot
from optimizer.search.state import Spot

SCENARIO = load_scenario("scenarios/fernhollow-court.yaml")
BOARD = board_of(build_instance(SCENARIO, sized_rooms(SCENARIO.brief), book_for("USD")))


def toured(seed):
    """Pool of a short tour."""
    pool = Pool()
    explore(BOARD, pool, Tour(15, seed=seed), stop=threading.Event())
    return pool


def test_same_seed_same_pool():
    """One seed passes the same layouts every time."""
    assert toured(3).ranked() == toured(3).ranked() != []


def test_insertion_is_the_best_of_all_positions():
    """No sampled position of the nook is better than the one that insertion finds, by a full count of the layout."""
    _, state = toured(5).ranked()[0]
    room = 3
    spot = best_spot(BOARD, state, room)
    best = value_of(BOARD, (*state[:room], spot, *state[room + 1 :]))
    random = np.random.default_rng(0)
    for _ in range(300):
        at = Spot(0, int(random.integers(BOARD.column, BOARD.xs[-1])), int(random.integers(BOARD.row, BOARD.ys[-1])))
        assert value_of(BOARD, (*state[:room], at, *state[room + 1 :])) >= best
