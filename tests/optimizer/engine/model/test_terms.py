"""Explorer, count and model agree term by term: the model's part of every loss is what is counted, or a floor of it.

A state is held in the model, and each of its losses made as small as the model lets it be.
"""

import numpy as np
import pytest

from optimizer.brief import Relation
from optimizer.catalogue import sized_rooms
from optimizer.engine.explorer import Limits, value_of
from optimizer.engine.explorer.explore import Explorer
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Spot, modelled_losses, stamp_losses
from optimizer.scenario import load_scenario
from tests.circle_yard import circle_yard
from tests.explored import explored, states
from tests.held import losses_in_model
from tests.yards import plain_rooms, plain_yard

NAMES = ("heron-lane", "fernhollow-court", "ribbon-lane", "thimble-yard", "tumbledown-bank", "wattle-rise", "circle")


@pytest.fixture(scope="module", params=NAMES)
def explorer(request) -> Explorer:
    """A short tour of each demonstration yard, and of one with a circle."""
    scenario = circle_yard() if request.param == "circle" else load_scenario(f"scenarios/{request.param}.yaml")
    return explored(scenario, sized_rooms(scenario.brief), rebuilds=30, seed=3)


def test_each_loss_is_what_is_counted(explorer):
    """Of the best states and of a poor one, every named loss."""
    problem, found = explorer.board.problem, states(explorer)
    for state in (found[0], found[-1]):
        counted = {name: cents for name, cents in modelled_losses(problem, state).items() if cents}
        in_model = losses_in_model(problem, state)
        assert {name: cents for name, cents in in_model.items() if cents} == counted


def test_the_models_part_is_a_floor(explorer):
    """What the model leaves out or rounds down is never below nothing: the explorer counts at least as much."""
    problem, limits = explorer.board.problem, Limits.of(explorer.board.problem)
    for state in states(explorer):
        losses = modelled_losses(problem, state).values()
        assert min(losses) >= 0
        assert sum(losses) <= value_of(explorer.board, limits, state, learned=False)
    for room in problem.rooms:
        for exact, floor, allowed in zip(room.places, room.floors, room.allowed, strict=True):
            assert (floor[allowed] <= exact[allowed]).all()


def test_the_model_refuses_what_the_explorer_forbids(explorer):
    """Random states with rooms where each may stand alone: the model has them exactly where no stamp forbids them."""
    problem, limits, random = explorer.board.problem, Limits.of(explorer.board.problem), np.random.default_rng(7)
    verdicts = []
    for state in states(explorer)[:6]:
        room = int(random.choice([i for i, spot in enumerate(state) if spot is not None]))
        y, x = random.choice(np.argwhere(problem.rooms[room].allowed[state[room].variant])).tolist()
        moved = (*state[:room], Spot(state[room].variant, x, y), *state[room + 1 :])
        # A room that floats in a ring is known to the explorer more exactly than to the model.
        if not limits.are_kept(moved):
            continue
        contacts = value_of(explorer.board, limits, moved, learned=False) >= FORBIDDEN
        stamps = max(stamp_losses(problem, moved).values(), default=0) >= FORBIDDEN
        infeasible = losses_in_model(problem, moved) is None
        assert infeasible == contacts or (contacts and not stamps and problem.rooms[room].name)
        verdicts.append(infeasible)
    assert verdicts


WISHES = (
    Relation(("nook", "table"), "near", within_ft=6, wish=1),
    Relation(("nook", "cooker"), "apart", at_least_ft=12, wish=2),
    Relation(("cooker", "table"), "touching", shared_edge_ft=6, wish=3),
    Relation(("cooker", "nook"), "faces", wish=4),
)


def test_wishes_are_counted_where_they_are_missed():
    """Layouts of a yard with a wish of each kind between rooms: counted alike, some kept and some missed."""
    explorer = explored(plain_yard(*WISHES, ceiling=None), plain_rooms())
    problem, found = explorer.board.problem, states(explorer)
    missed = [stamp_losses(problem, state).get("wishes", 0) for state in found]
    assert len(set(missed)) > 2
    for state, loss in list(zip(found, missed, strict=True))[::5]:
        assert losses_in_model(problem, state)["wishes"] == loss
