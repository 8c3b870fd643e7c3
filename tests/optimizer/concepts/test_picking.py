"""Which layouts the judge sees next: the best, new ideas, with every room and without; none that is dear or refused."""

from dataclasses import replace

import pytest

from optimizer.concepts.picking import TURNS, Picker
from optimizer.concepts.ranking import LEAST_DIFFERENCE
from optimizer.engine.explorer import Explorer, Limits, Pool, board_of, value_of
from optimizer.engine.portfolio import Purse
from optimizer.engine.problem.alike import Archive
from optimizer.engine.problem.arrangement import key_of
from tests.tiny import BUDGET, every_value, tiny

DIAGONAL_FT = 40.0  # far more than the tiny grid's, so that places alone make little difference


def picker(*, most=None, likely=0):
    """A picker over the best layout of every arrangement of the tiny problem, and those layouts, best first."""
    problem = tiny("trips", amounts=(replace(BUDGET, most=most),))
    board, limits = board_of(problem), Limits.of(problem)
    explorer = Explorer(board)
    for state in every_value("trips"):
        value, key = value_of(board, limits, state), key_of(problem, state)
        if key not in explorer.pool.best or value < explorer.pool.best[key][0]:
            explorer.pool.best[key] = (value, state)
    purse = Purse(problem)
    for _ in range(5):
        purse.learn(nowhere := (None,) * len(problem.rooms), purse.of_rooms(nowhere) + likely)
    return Picker(explorer, purse, Archive(problem, DIAGONAL_FT)), [state for _, state in explorer.pool.ranked()]


def test_one_of_each_kind_in_turn():
    """Nothing is known: the best, then the next with every room, twice, then one that lacks a room; none twice."""
    picking, ranked = picker()
    picked = picking.pick(4)
    assert picked[0] == ranked[0]
    whole = [state for state in ranked if all(state) and state != ranked[0]]
    assert picked[1:3] == tuple(whole[:2])
    assert not all(picked[3])
    every = [*picked]
    while more := picking.pick(30):
        every += more
    assert len(set(every)) == len(every) == len(ranked)


def test_turns_go_on_where_they_were_left():
    """However few are picked at a time, each kind has its turn: the second of the second three is of an idea."""
    picking, ranked = picker()
    pool = picking.explorer.of_ideas["court"] = Pool()
    pool.best[key_of(picking.explorer.board.problem, ranked[-1])] = (0, ranked[-1])
    picking.pick(3)
    assert picking.pick(3)[1] == ranked[-1]


def test_the_best_again_and_again():
    """Whatever turn it is: the best that was not seen, until there is none."""
    picking, ranked = picker()
    assert [picking.best() for _ in range(3)] == [(state,) for state in ranked[:3]]
    picking.seen.update(ranked)
    assert picking.best() == ()


def test_new_ideas_differ_from_all_that_hold():
    """The second and fourth picked differ clearly from what is known, though there are better layouts that do not."""
    picking, ranked = picker()
    known = ranked[:8]
    for state in known:
        picking.known.add(state)
    _, whole, _, part = picking.pick(4)
    ranks = [ranked.index(state) for state in (whole, part)]
    for state in (whole, part):
        assert picking.known.least_difference(state) >= LEAST_DIFFERENCE
    alike = [s for s in ranked[1 : ranks[0]] if all(s) and picking.known.least_difference(s) < LEAST_DIFFERENCE]
    assert alike
    assert min(ranks) > 0


def test_programs_take_turns():
    """Of layouts that lack a room those of another program are picked each time."""
    picking, _ = picker()
    lacking = {tuple(spot is None for spot in picking.pick(len(TURNS))[3]) for _ in range(6)}
    assert len(lacking) > 1


def test_what_was_refused_is_not_picked():
    """Nor what is near to it."""
    picking, ranked = picker()
    problem, refusals = picking.explorer.board.problem, picking.explorer.refusals
    refusals.learn(problem, ranked[0], (0, 1))
    picked = picking.pick(len(ranked))
    assert 0 < len(picked) < len(ranked)
    assert not any(refusals.forbid(problem, state) for state in picked)


@pytest.mark.parametrize("likely", [0, 3])
def test_what_will_pass_the_ceiling_comes_last(likely):
    """By what its rooms cost and the ways will likely cost: the best of what can be paid is seen before the best."""
    picking, ranked = picker(most=7, likely=likely)
    dear = [picking.purse.of_rooms(state) + likely > 7 for state in ranked]
    assert True in dear
    assert False in dear
    assert picking.best() == (ranked[dear.index(False)],)


def test_what_was_learned_of_places_counts(monkeypatch):
    """A layout that stands where the judge found more to pay comes later."""
    picking, ranked = picker()
    monkeypatch.setattr(picking.explorer.board, "estimate", lambda state: 10_000 if state == ranked[0] else 0)
    assert picking.best() == (ranked[1],)


def test_a_layout_without_rooms_is_none():
    """It is not worth a judge's time."""
    problem = tiny("trips")
    explorer = Explorer(board_of(problem))
    explorer.pool.best[key_of(problem, (None, None, None))] = (0, (None, None, None))
    assert Picker(explorer, Purse(problem), Archive(problem, DIAGONAL_FT)).pick(3) == ()


def test_ideas_take_turns():
    """The best of the idea that the judge has seen least of; what was seen is passed over."""
    picking, ranked = picker()
    last = [state for state in ranked if all(state)][-8:]
    for name, states in (("court", last[:4]), ("garden", last[4:])):
        pool = picking.explorer.of_ideas[name] = Pool()
        for number, state in enumerate(states):
            pool.best[key_of(picking.explorer.board.problem, state)] = (number, state)
    picking.seen.add(last[4])
    # The ordinary kinds take the best of all, which are others.
    picked = [state for _ in range(4) for state in picking.pick(len(TURNS))]
    assert [state for state in picked if state in last] == [last[0], last[5], last[1], last[6]]


def test_without_ideas_the_others_take_the_places():
    """Nothing is picked twice, and nobody waits for an idea that has no more."""
    picking, ranked = picker()
    pool = picking.explorer.of_ideas["court"] = Pool()
    pool.best[key_of(picking.explorer.board.problem, ranked[30])] = (0, ranked[30])
    picked = picking.pick(9)
    assert picked[4] == ranked[30]
    assert len(set(picked)) == 9
