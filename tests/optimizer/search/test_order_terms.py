"""What the explorer counts for order: as measured, and at every insertion what it really adds."""

import threading

import pytest

from optimizer.appraisal.order import disorder_ft, near_miss_ft, unaligned_ft
from optimizer.catalogue import book_for, rates, sized_rooms
from optimizer.instance import build_instance
from optimizer.model import arrangement_scope, build_model
from optimizer.scenario import load_scenario
from optimizer.search import Pool, Tour, board_of, explore, key_of, layout_of, value_of
from optimizer.search.near_misses import near_miss_loss, near_miss_table
from optimizer.search.order import order_loss, order_table
from optimizer.search.solve import Effort, hint, solve

SCENARIO = load_scenario("scenarios/wattle-rise.yaml")
BOARD = board_of(build_instance(SCENARIO, sized_rooms(SCENARIO.brief), book_for(SCENARIO.currency)))
CENTS = 100


@pytest.fixture(scope="module")
def states():
    """Layouts that a short tour passes, good and bad ones."""
    pool = Pool()
    explore(BOARD, pool, Tour(25, seed=3), stop=threading.Event())
    return [state for _, state in pool.ranked()]


def besides_walls(state):
    """What near misses with buildings and structures cost a state [cents]."""
    rooms = BOARD.instance.rooms
    spots = [(room, spot) for room, spot in enumerate(state) if spot is not None]
    return sum(int(rooms[room].near_misses[spot.variant][spot.y, spot.x]) for room, spot in spots)


def test_order_is_counted_as_it_is_measured(states):
    """To the rounding of rates to whole cents for each step, of which no layout has more than a few hundred."""
    money = CENTS * SCENARIO.brief.weights.order
    for state in states:
        site, layout = SCENARIO.site, layout_of(BOARD.instance, state)
        measured = rates().order * unaligned_ft(site, layout) + rates().disorder * disorder_ft(site, layout)
        assert order_loss(BOARD, state) == pytest.approx(money * measured, abs=200)
        near = money * rates().near_miss * near_miss_ft(site, layout)
        assert near_miss_loss(BOARD, state) + besides_walls(state) == pytest.approx(near, abs=50)


def test_some_layout_is_out_of_order(states):
    """The other side of the claim: both terms are met above 0 and at 0."""
    rooms = [near_miss_loss(BOARD, state) for state in states]
    beyond = [disorder_ft(SCENARIO.site, layout_of(BOARD.instance, state)) for state in states]
    assert min(rooms) == min(beyond) == 0
    assert max(rooms) > 0
    assert max(beyond) > 0


def test_an_insertion_adds_what_its_table_says(states):
    """For every room of every state: with it less without it."""
    for state in states[:8]:
        for room, spot in enumerate(state):
            if spot is None:
                continue
            without = (*state[:room], None, *state[room + 1 :])
            at = spot.y - BOARD.row, spot.x - BOARD.column
            for table, loss in ((order_table, order_loss), (near_miss_table, near_miss_loss)):
                added = loss(BOARD, state) - loss(BOARD, without)
                assert table(BOARD, state, room, spot.variant)[at] == added


def test_the_model_counts_all_but_near_misses(states):
    """The solver's optimum of an arrangement is the explorer's count of the same layout, less its near misses."""
    state = states[0]
    built = build_model(BOARD.instance, arrangement_scope(BOARD.instance, *key_of(BOARD, state)))
    hint(built, state)
    answer = solve(built, Effort(deterministic_s=30.0))
    assert answer.verdict == "optimal"
    besides = near_miss_loss(BOARD, answer.state) + besides_walls(answer.state)
    assert answer.objective == value_of(BOARD, answer.state) - besides
