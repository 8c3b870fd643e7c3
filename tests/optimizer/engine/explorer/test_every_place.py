"""Insertion, stamps and tours against every place of a grid so small that all can be tried."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.engine.explorer import Explorer, Limits, Refusals, Tour, best_spot, board_of, explore, value_of
from optimizer.engine.explorer.insertion import ABSENT_REQUIRED, Noise
from optimizer.engine.explorer.limits import ring_room
from optimizer.engine.pairs import FORBIDDEN, Gaps, Penalty
from optimizer.engine.problem import Guide, Spot
from tests.explored import NEVER, states
from tests.tiny import COLUMNS, NAMES, ROOMS, ROWS, every_value, ring, spots, tiny

OFFSETS = np.arange(-COLUMNS, COLUMNS + 1), np.arange(-ROWS, ROWS + 1)


def with_room(state, room, spot):
    return (*state[:room], spot, *state[room + 1 :])


def some_states(name, count):
    """Layouts of the tiny problem, drawn evenly from all."""
    every = list(every_value(name))
    return every[:: max(1, len(every) // count)]


def stamps_of(problem):
    """Every composite stamp with the pair's stamps one by one, at every offset of the grid."""
    board = board_of(problem)
    for pair in problem.pairs:
        for v, one in enumerate(problem.rooms[pair.first].variants):
            for w, other in enumerate(problem.rooms[pair.second].variants):
                gaps = Gaps(one, other, *OFFSETS, 1.0)
                asked = sum(stamp.cents(gaps) for stamp in (Penalty("contact", pair.contact), *pair.stamps))
                yield board.stamp(pair.first, v, pair.second, w), board.stamp(pair.second, w, pair.first, v), asked


@pytest.mark.parametrize("name", NAMES)
def test_a_stamp_is_the_sum_of_its_parts(name):
    """At every offset, whichever room moves; added to a table wherever that begins; its least is the least of all."""
    for stamp, turned, asked in stamps_of(tiny(name)):
        table = np.zeros_like(asked)
        stamp.add_to(table, -COLUMNS, -ROWS)
        assert (table == asked).all()
        for up, right in np.ndindex(asked.shape):
            assert stamp.at(right - COLUMNS, up - ROWS) == asked[up, right]
            assert turned.at(COLUMNS - right, ROWS - up) == asked[up, right]
        for first, last in ((0, 4), (3, 8), (7, 11)):
            part = np.zeros_like(asked[first:last, first:last])
            stamp.add_to(part, first - COLUMNS, first - ROWS)
            assert (part == asked[first:last, first:last]).all()
        least = {min(FORBIDDEN, int(cents)) for cents in (stamp.least, turned.least, asked.min())}
        assert len(least) == 1


def best_by_hand(board, limits, state, room, refusals):
    """Least value of a state with the room at any of its places, or left out; what is refused is none."""
    values = []
    for spot in (*spots(board.problem.rooms[room]), None):
        found = with_room(state, room, spot)
        if spot is None or not refusals.forbid(board.problem, found):
            values.append(value_of(board, limits, found))
    return min(values)


@pytest.mark.parametrize("what", ["plain", "ring", "refused", "learned", "no order"])
@pytest.mark.parametrize("name", NAMES)
def test_insertion_is_the_best_of_every_place(name, what):
    """For every room of many layouts, with what else guides or binds it; where it stood is tried first or not."""
    problem = tiny(name, rings=(ring(3.0),) if what == "ring" else ())
    if what == "no order":
        problem = replace(problem, order=replace(problem.order, rate=0, disorder_rate=0))
    board, limits, random = board_of(problem), Limits.of(problem), np.random.default_rng(3)
    if what == "learned":
        board.learn([random.integers(-60, 60, (4, 4)).astype(float) for _ in ROOMS])
    for state in some_states(name, 25):
        refusals = Refusals()
        if what == "refused":
            refusals.learn(problem, state, (0, 1))
        for room in range(len(ROOMS)):
            others = with_room(state, room, None)
            if not limits.are_kept(others) or refusals.forbid(problem, others):
                continue
            for at in (None, state[room]):
                spot = best_spot(board, limits, others, room, refusals=refusals, at=at)
                found = with_room(state, room, spot)
                assert spot is None or not refusals.forbid(problem, found)
                assert value_of(board, limits, found) == best_by_hand(board, limits, others, room, refusals)


def test_a_ring_is_shared():
    """What one room takes of a ring is gone for the other; together they take no more than it bears."""
    problem = tiny("trips", rings=(ring(3.0),))
    limits = Limits.of(problem)
    table, nook = Spot(0, 0, 0), Spot(0, 2, 3)
    ((_, left),) = ring_room(problem, (table, None, None), 2)
    assert left == 1.0
    assert limits.are_kept((table, None, None))
    assert not limits.are_kept((table, None, nook))


def test_noise_leaves_the_best_now_and_then():
    """Some draws put a room elsewhere, on a place that is allowed."""
    problem = tiny("trips")
    board, limits, random = board_of(problem), Limits.of(problem), np.random.default_rng(1)
    state = some_states("trips", 3)[1]
    found = {best_spot(board, limits, state, 0, refusals=Refusals(), noise=Noise(random, 300)) for _ in range(20)}
    assert len(found) > 1
    assert all(value_of(board, limits, with_room(state, 0, spot)) < ABSENT_REQUIRED for spot in found)


def test_a_tour_draws_noise(monkeypatch):
    """Without noise the same draws pass other layouts."""
    passed = []
    for share in (explore.NOISY_SHARE, 0.0):
        monkeypatch.setattr(explore, "NOISY_SHARE", share)
        explorer = Explorer(board_of(tiny("trips")))
        explorer.run(Tour(60, 3), stop=NEVER)
        passed.append(explorer.pool.seen)
    assert passed[0] != passed[1]


@pytest.mark.parametrize("name", NAMES)
def test_tours_find_the_least_of_all(name, monkeypatch):
    """Of an explorer that is given a few tours, by its own count; every layout in its pool is worth that count."""
    monkeypatch.setattr(explore, "LEAST_HEAT_CENTS", 60)  # a tiny grid has tiny losses
    problem = tiny(name)
    board, limits = board_of(problem), Limits.of(problem)
    explorer = Explorer(board)
    for seed in range(6):
        explorer.run(Tour(80, seed), stop=NEVER)
    ranked = explorer.pool.ranked()
    assert ranked[0][0] == min(value_of(board, limits, state) for state in every_value(name))
    assert [value for value, _ in ranked] == sorted(value for value, _ in ranked)
    for value, state in ranked:
        assert state in every_value(name)
        assert value == value_of(board, limits, state)


def test_tours_do_without_a_room_or_insist_on_it():
    """The nook is in none of the layouts, or in all that are kept."""
    for tour, there in ((Tour(30, 1, without=frozenset({2})), False), (Tour(30, 1, insist=frozenset({2})), True)):
        explorer = Explorer(board_of(tiny("trips")))
        explorer.run(tour, stop=NEVER)
        assert {state[2] is not None for state in states(explorer)} == {there}


def test_money_is_kept_for_rooms_that_must_come():
    """While the table is away the others may take what is left beside the cheapest one; what runs cost counts too."""
    problem, small = tiny("trips"), (None, None, Spot(1, 0, 0))
    assert Limits.of(problem).left_for(small, 1)[0] == {2}
    assert Limits.of(problem).left_for((None, None, Spot(0, 0, 0)), 1)[0] == set()
    assert Limits.of(problem, set_aside=2).left_for(small, 1)[0] == set()
    runs = Guide(((0, 0), (0, 0, 0), (2, 2)), 0)
    assert Limits.of(replace(problem, guide=runs)).left_for(small, 1)[0] == set()


def test_doubts_are_taken_where_nothing_else_is():
    """A place in doubt costs what it costs to do without the room, in what guides alone."""
    left_half = np.zeros((ROWS, COLUMNS), dtype=bool)
    left_half[:, :3] = True
    guide = Guide(tiny("trips").guide.runs, 0, ((left_half, None), (None,) * 3, (None, None)))
    problem = tiny("trips", guide=guide)
    board, plain, limits = board_of(problem), board_of(tiny("trips")), Limits.of(problem)
    for spot in spots(ROOMS[0]):
        state = (spot, None, None)
        in_doubt = ROOMS[0].absent_loss if spot.variant == 0 and spot.x < 3 else 0
        assert value_of(board, limits, state) == value_of(plain, limits, state) + in_doubt
        assert value_of(board, limits, state, learned=False) == value_of(plain, limits, state)
        assert board.estimate(state) == in_doubt < FORBIDDEN
