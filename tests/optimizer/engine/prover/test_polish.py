"""The best of an arrangement, and what is said of it."""

import threading

import pytest

from optimizer.catalogue import sized_rooms
from optimizer.engine.explorer import Limits, value_of
from optimizer.engine.problem import modelled_value
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover import polish, unproven
from optimizer.scenario import load_scenario
from tests.explored import explored, states

NEVER = threading.Event()


@pytest.mark.parametrize("name", ["thimble-yard", "ribbon-lane"])
def test_polished_value_is_the_models_own(name):
    """A polish is no worse than where it began, keeps the arrangement, and its bound stays below what the layout counts."""
    scenario = load_scenario(f"scenarios/{name}.yaml")
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=25)
    board, limits = explorer.board, Limits.of(explorer.board.problem)
    moved = 0
    for state in states(explorer)[:5]:
        proof = polish(board, state, stop=NEVER)
        assert proof.objective == modelled_value(board.problem, proof.state)
        counts = [value_of(board, limits, one, learned=False) for one in (proof.state, state)]
        assert counts[0] <= counts[1]
        assert 0 < proof.bound <= proof.objective
        assert key_of(board.problem, proof.state) == key_of(board.problem, state)
        moved += proof.state != state
    assert moved


def test_unproven_claims_nothing():
    """A state that the solver has not seen has a bound of nothing and no proof."""
    scenario = load_scenario("scenarios/thimble-yard.yaml")
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=5)
    proof = unproven(explorer.board, states(explorer)[0])
    assert (proof.bound, proof.is_proven) == (0, False)
    assert proof.objective > 0


def test_stopped_at_once_stays_as_it_was():
    """With no time at all the layout is kept, and its bound is a bound."""
    scenario = load_scenario("scenarios/fernhollow-court.yaml")
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=10)
    stop = threading.Event()
    stop.set()
    state = states(explorer)[0]
    proof = polish(explorer.board, state, stop=stop)
    assert proof.bound <= proof.objective
    assert modelled_value(explorer.board.problem, proof.state) == proof.objective
