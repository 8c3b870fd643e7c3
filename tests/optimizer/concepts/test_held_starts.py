"""Asked again with a hold: what is known and keeps it is judged before anything is searched, the rest is mended."""

import threading
from dataclasses import replace
from itertools import combinations
from math import dist

import numpy as np
import pytest

from optimizer.brief import Hold
from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import Gathering
from optimizer.concepts.rounds import Rounds
from optimizer.concepts.whole import Whole
from optimizer.concepts.workers import Workers
from optimizer.engine.explorer import Explorer, board_of, mended
from optimizer.engine.explorer.between import between
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import build_problem, layout_of, state_of, what_fits
from optimizer.engine.prover import Budget
from optimizer.layout import Layout
from optimizer.scenario import load_scenario
from tests.yards import holding

YARD = load_scenario("scenarios/thimble-yard.yaml")


@pytest.fixture(scope="module")
def known(shown):
    """The first concept of a run that other tests look at too, before its rooms grew."""
    return shown("thimble-yard").found.options[0].layout.base


def held(at):
    """The case with a room held where a placement has it, and its problem."""
    scenario = holding(YARD, Hold(at.room, at_ft=(at.x_ft, at.y_ft)))
    case = Case.of(scenario)
    return case, build_problem(scenario, case.rooms, case.book)


def beside(known):
    """The first room of the known layout at the nearest other place that it may have."""
    case = Case.of(YARD)
    problem = build_problem(YARD, case.rooms, case.book)
    state = state_of(problem, known)
    room, spot = next((n, spot) for n, spot in enumerate(state) if spot is not None)
    places = np.argwhere(problem.rooms[room].allowed[spot.variant])
    y, x = min((at for at in places if tuple(at) != (spot.y, spot.x)), key=lambda at: dist(at, (spot.y, spot.x)))
    moved = tuple(replace(spot, x=int(x), y=int(y)) if n == room else other for n, other in enumerate(state))
    return layout_of(problem, moved).placements[0]


def test_what_keeps_the_hold_is_judged_first(known):
    """When the first concept is told the explorer has not looked at anything."""
    case, problem = held(known.placements[0])
    explorer, seen = Explorer(board_of(problem)), []
    gathering = Gathering(case, problem, lambda _: seen.append(len(explorer.pool.best)))
    never = threading.Event()
    with Workers(case, processes=0) as workers:
        workers.read(problem)
        whole = Whole(problem, Budget(never, work_s=0.1, seed=1))
        search = Rounds(gathering, explorer, workers, whole, 1, 3, Clock(never))
        search.first([state_of(problem, known)])
    assert seen[0] == 0
    assert known in gathering.finds


def test_a_layout_that_breaks_the_hold_is_mended(known):
    """The held room stands where it is held, and of the others those stay that no rule keeps from standing beside it."""
    wanted = beside(known)
    _, problem = held(wanted)
    assert state_of(problem, known) is None
    board, before = board_of(problem), what_fits(problem, known)
    after = mended(board, before)
    place = layout_of(problem, after).of(wanted.room)
    assert (place.x_ft, place.y_ft) == (wanted.x_ft, wanted.y_ft)
    stands = [(n, spot) for n, spot in enumerate(after) if spot is not None]
    assert all(between(board, one, other) < FORBIDDEN for one, other in combinations(stands, 2))
    for n, spot in enumerate(before):
        if spot is not None and after[n] is None:
            assert any(between(board, (n, spot), other) >= FORBIDDEN for other in stands)
        else:
            assert after[n] == spot or problem.rooms[n].name == wanted.room


def test_a_layout_of_another_yard_is_no_start(known):
    """Rooms that the problem does not know are passed over."""
    _, problem = held(known.placements[0])
    strange = Layout((*known.placements, replace(known.placements[0], room="carousel")))
    assert state_of(problem, strange) is None
    assert what_fits(problem, strange) == state_of(problem, known)
