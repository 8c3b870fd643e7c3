"""What judged layouts teach about places."""

import numpy as np
import pytest

from optimizer.catalogue import book_for
from optimizer.engine.explorer import Limits, Residuals, board_of, value_of
from optimizer.engine.problem import Spot, build_problem
from tests.yards import plain_rooms, plain_yard

PROBLEM = build_problem(plain_yard(ceiling=None), plain_rooms(), book_for("USD"))


def anywhere(random, room):
    """A spot of a room's first variant where it may stand."""
    y, x = random.choice(np.argwhere(PROBLEM.rooms[room].allowed[0])).tolist()
    return Spot(0, x, y)


def beyond(state):
    """A loss that nobody told the explorer of: 20 money a foot that the table stands to the right."""
    return 2000.0 * state[0].x + 50_000 * (state[3] is not None)


@pytest.fixture(scope="module")
def taught():
    """A board that learned from 60 layouts, and 40 others."""
    random = np.random.default_rng(2)
    drawn = [
        (anywhere(random, 0), None, None, anywhere(random, 3) if random.random() < 0.5 else None) for _ in range(100)
    ]
    residuals, board = Residuals(PROBLEM), board_of(PROBLEM)
    for state in drawn[:60]:
        residuals.learn(state, beyond(state))
    board.learn(residuals.tables())
    return board, drawn[60:]


def test_it_tells_unseen_layouts_apart(taught):
    """On layouts that it never saw, the estimate follows the hidden loss; before, it said nothing."""
    board, unseen = taught
    said, true = [board.estimate(state) for state in unseen], [beyond(state) for state in unseen]
    assert np.corrcoef(said, true)[0, 1] > 0.9
    assert {board_of(PROBLEM).estimate(state) for state in unseen} == {0}


def test_a_layout_is_foretold_with_what_all_cost():
    """Near to the hidden loss itself, also after one more is learned."""
    random = np.random.default_rng(3)
    drawn = [(anywhere(random, 0), None, None, None) for _ in range(80)]
    residuals = Residuals(PROBLEM)
    for state in drawn[:60]:
        residuals.learn(state, 1_000_000 + beyond(state))
    off = [residuals.at(state) - 1_000_000 - beyond(state) for state in drawn[60:]]
    spread = np.std([beyond(state) for state in drawn])
    assert np.std(off) < spread / 3
    assert abs(np.mean(off)) < spread / 3
    before = residuals.at(drawn[60])
    residuals.learn(drawn[60], 1_000_000 + beyond(drawn[60]) + 10 * spread)
    assert residuals.at(drawn[60]) > before + spread / 4


def test_it_is_in_what_an_insertion_counts(taught):
    """The value with what was learned is the count and the estimate; without it the count alone."""
    board, unseen = taught
    limits, plain = Limits.of(PROBLEM), board_of(PROBLEM)
    for state in unseen[:10]:
        counted = value_of(plain, limits, state)
        assert value_of(board, limits, state, learned=False) == counted
        assert value_of(board, limits, state) == counted + board.estimate(state)


def test_old_layouts_are_forgotten():
    """So that a long search does not slow down."""
    residuals, state = Residuals(PROBLEM), (Spot(0, 30, 20), None, None, None)
    for number in range(450):
        residuals.learn(state, float(number))
    assert len(residuals.cents) == 400
    assert residuals.cents[-1] == 449.0
