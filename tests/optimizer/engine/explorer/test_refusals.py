"""What the judge refused is not found again nearby, and nothing else is struck out."""

import numpy as np

from optimizer.catalogue import book_for
from optimizer.engine.explorer import Explorer, Limits, Refusals, Tour, best_spot, board_of
from optimizer.engine.explorer.refusals import NEAR
from optimizer.engine.problem import build_problem
from tests.explored import NEVER, explored, states
from tests.yards import plain_rooms, plain_yard


def near(problem, one, other):
    """Whether a room of the same shape stands within the neighbourhood."""
    return one is not None and other is not None and abs(one.x - other.x) <= NEAR and abs(one.y - other.y) <= NEAR


def test_a_refused_pair_is_not_put_together_again():
    """With table and nook of the best layout refused, no layout of the same tour has both so near to these places."""
    explorer = explored(plain_yard(ceiling=None), plain_rooms())
    problem, refused = explorer.board.problem, states(explorer)[0]
    again = Explorer(board_of(problem))
    again.refusals.learn(problem, refused, (0, 3))
    again.run(Tour(40, 1), stop=NEVER)
    assert again.pool.best
    for state in states(again):
        assert not again.refusals.forbid(problem, state)
        same = [
            near(problem, state[room], refused[room])
            and problem.rooms[room].variants[state[room].variant].shape
            == problem.rooms[room].variants[refused[room].variant].shape
            for room in (0, 3)
        ]
        assert not all(same)


def test_one_of_the_two_may_stand_there():
    """The table stays where it stood: it is the nook that must go."""
    explorer = explored(plain_yard(ceiling=None), plain_rooms())
    problem, refused = explorer.board.problem, states(explorer)[0]
    refusals = Refusals()
    refusals.learn(problem, refused, (0, 3))
    limits = Limits.of(problem)
    without = (*refused[:3], None)
    nook = best_spot(explorer.board, limits, without, 3, refusals=refusals)
    table = best_spot(explorer.board, limits, (None, *without[1:]), 0, refusals=refusals)
    assert table == best_spot(explorer.board, limits, (None, *without[1:]), 0, refusals=Refusals())
    assert nook is None or not near(problem, nook, refused[3])
    assert refusals.strikes(problem, without, 3, refused[3])
    assert not refusals.strikes(problem, (None, *without[1:]), 3, refused[3])


def test_where_nobody_is_blamed_all_are():
    """A finding without rooms forbids the whole layout nearby, and a copy adds nothing."""
    problem = build_problem(plain_yard(ceiling=None), plain_rooms(), book_for("USD"))
    state = states(explored(plain_yard(ceiling=None), plain_rooms()))[0]
    refusals = Refusals()
    for _ in range(2):
        refusals.learn(problem, state, ())
    assert [len(members) for members in refusals.all] == [sum(spot is not None for spot in state)]
    assert refusals.forbid(problem, state)
    assert not refusals.forbid(problem, (None, *state[1:]))


def test_a_layout_without_rooms_forbids_nothing():
    """Refused, it teaches nothing of where rooms may stand."""
    problem = build_problem(plain_yard(ceiling=None), plain_rooms(), book_for("USD"))
    refusals = Refusals()
    refusals.learn(problem, (None,) * len(problem.rooms), ())
    assert not refusals.forbid(problem, states(explored(plain_yard(ceiling=None), plain_rooms()))[0])


def test_the_neighbourhood_ends_after_its_steps():
    """A table of zeros has exactly the neighbourhood struck out, cropped where it leaves the table."""
    explorer = explored(plain_yard(ceiling=None), plain_rooms())
    problem, state = explorer.board.problem, states(explorer)[0]
    refusals, spot = Refusals(), state[0]
    refusals.learn(problem, state, (0,))
    shape = problem.rooms[0].variants[spot.variant].shape
    table = np.zeros((20, 20), dtype=np.int64)
    refusals.strike(explorer.board, state, 0, shape, table, row=spot.y - 10, column=spot.x - 1)
    struck = np.argwhere(table > 0)
    assert struck.min(axis=0).tolist() == [10 - NEAR, 0]
    assert struck.max(axis=0).tolist() == [10 + NEAR, 1 + NEAR]
