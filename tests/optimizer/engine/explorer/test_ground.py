"""A tour on an idea's ground: rooms stand where the idea has them, and count as they do elsewhere."""

import numpy as np
import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.engine.explorer import Explorer, Ground, Tour, board_of
from optimizer.engine.problem import Spot, build_problem
from optimizer.scenario import load_scenario
from tests.explored import NEVER

SCENARIO = load_scenario("scenarios/thimble-yard.yaml")
PROBLEM = build_problem(SCENARIO, sized_rooms(SCENARIO.brief), book_for("USD"))
TABLE = next(n for n, room in enumerate(PROBLEM.rooms) if room.required)


def ground(leaves):
    """Ground of the table: corners of which (columns, rows) are left."""
    rows, columns = np.indices(PROBLEM.rooms[TABLE].allowed[0].shape)
    cells = leaves(columns, rows)
    return Ground("an idea", {(TABLE, v): cells for v in range(len(PROBLEM.rooms[TABLE].variants))})


FAR = ground(lambda columns, _rows: columns >= 40)


@pytest.fixture(scope="module")
def explorer():
    """A tour anywhere, and one with the table far from the house."""
    explorer = Explorer(board_of(PROBLEM))
    explorer.run(Tour(15, 1), stop=NEVER)
    explorer.run(Tour(15, 2, ground=FAR), stop=NEVER)
    return explorer


def test_rooms_stand_on_the_ground(explorer):
    """All that the idea's tour kept; the other tour has tables elsewhere, and nothing of its is called by the idea."""
    own = [state for _, state in explorer.of_ideas["an idea"].ranked()]
    assert own
    assert all(state[TABLE].x >= 40 for state in own)
    assert [*explorer.of_ideas] == ["an idea"]
    assert any(state[TABLE].x < 40 for _, state in explorer.pool.ranked())


def test_what_an_idea_finds_counts_as_everything_does(explorer):
    """In the idea's own pool and in the one of all, where it is the best of its arrangement."""
    own, of_all = explorer.of_ideas["an idea"], explorer.pool
    assert own.seen <= of_all.seen
    for key, (value, state) in own.best.items():
        assert value == explorer.counted(state)
        assert of_all.best[key][0] <= value
    assert any(of_all.best[key][1] == state for key, (_, state) in own.best.items())


def test_without_ground_a_room_that_must_be_there_leaves_nothing():
    """A tour that has no place for the table keeps no layout."""
    explorer = Explorer(board_of(PROBLEM))
    explorer.run(Tour(5, 1, ground=ground(lambda columns, _rows: columns < 0)), stop=NEVER)
    assert explorer.pool.best == {}


def test_a_board_is_not_changed_by_a_tour_on_less_ground(explorer):
    """Its windows are as they were, and stamps are made once for both."""
    fresh = board_of(PROBLEM)
    for row, again in zip(explorer.board.windows, fresh.windows, strict=True):
        for window, other in zip(row, again, strict=True):
            assert (window is None) == (other is None)
            assert window is None or (window.table == other.table).all()
    assert explorer.board.on(FAR).stamps is explorer.board.stamps


def test_what_stands_elsewhere_is_taken_up():
    """A start keeps the rooms that stand on the ground, and those of which the idea says nothing."""
    there, elsewhere = Spot(0, 45, 10), Spot(0, 30, 10)
    other = tuple(None if n == TABLE else Spot(0, 1, 1) for n in range(len(PROBLEM.rooms)))
    assert FAR.kept_of((*other[:TABLE], there, *other[TABLE + 1 :])) == (*other[:TABLE], there, *other[TABLE + 1 :])
    assert FAR.kept_of((*other[:TABLE], elsewhere, *other[TABLE + 1 :])) == other
