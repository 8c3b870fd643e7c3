"""The model against every kind of layout of a tiny grid: what it allows, and what each loss of it counts."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.engine.explorer import Limits
from optimizer.engine.model import arrangement_scope
from optimizer.engine.pairs import Contact
from optimizer.engine.problem import Spot, modelled_losses
from optimizer.engine.problem.arrangement import key_of
from tests.held import losses_in_model
from tests.tiny import BUDGET, NAMES, ROOMS, every_value, is_kept, only_at, ring, spots, tiny


def drawn(problem, count):
    """Layouts drawn from all there are, whether they keep anything or not."""
    random, own = np.random.default_rng(8), [spots(data) for data in problem.rooms]
    return [tuple(places[int(random.integers(len(places)))] for places in own) for _ in range(count)]


@pytest.mark.parametrize("name", NAMES)
def test_each_loss_is_what_is_counted(name):
    """Of layouts of every program, with rooms absent too; in the whole model and in that of the arrangement."""
    problem, every = tiny(name), list(every_value(name))
    some = [*every[:: len(every) // 14], *(state for state in every[:: len(every) // 90] if None in state)][:26]
    assert any(None in state for state in some)
    for number, state in enumerate(some):
        scope = arrangement_scope(problem, key_of(problem, state)) if number % 2 else None
        counted = {name: cents for name, cents in modelled_losses(problem, state).items() if cents}
        assert {name: cents for name, cents in losses_in_model(problem, state, scope).items() if cents} == counted


@pytest.mark.parametrize("name", NAMES)
def test_the_model_has_exactly_what_is_kept(name):
    """Contacts, rules and the budget: layouts drawn at random stand in the model where they keep all, else nowhere."""
    problem, verdicts = tiny(name), []
    for state in [*drawn(problem, 40), *list(every_value(name))[:: len(every_value(name)) // 8]]:
        verdicts.append(losses_in_model(problem, state) is not None)
        assert verdicts[-1] == is_kept(problem, state)
    assert set(verdicts) == {True, False}


def test_one_over_the_other_is_no_floor_of_walking():
    """Where rooms may overlap, those that do are as near as their anchors."""
    contact = Contact(gap=2, share=1)
    pairs = tuple(replace(pair, contact=contact) for pair in tiny("trips").pairs)
    problem = tiny("trips", pairs=pairs)
    for state in ((Spot(0, 0, 0), Spot(2, 0, 0), Spot(1, 1, 0)), (Spot(0, 1, 1), Spot(0, 2, 1), None)):
        counted = {name: cents for name, cents in modelled_losses(problem, state).items() if cents}
        assert losses_in_model(problem, state) == {**dict.fromkeys(losses_in_model(problem, state), 0), **counted}


def test_money_and_needs_bind_by_themselves():
    """Layouts that the pairs allow: in the model exactly where the sum over the choices lies within both limits."""
    free = tiny("trips", amounts=())
    bound = tiny("trips", amounts=(replace(BUDGET, least=7, most=9),))
    verdicts = set()
    for state in [s for s in drawn(free, 400) if is_kept(free, s)][:25]:
        kept = is_kept(bound, state)
        assert (losses_in_model(bound, state) is not None) == kept
        verdicts.add(kept)
    assert verdicts == {True, False}


def test_an_arrangement_holds_its_sides():
    """A layout stands in the model of its own arrangement and in no other's of the same choices."""
    problem, every = tiny("trips"), list(every_value("trips"))
    whole = [state for state in every if all(state)]
    keys = list(dict.fromkeys(key_of(problem, state) for state in whole))
    for state in whole[:: len(whole) // 8]:
        own = key_of(problem, state)
        for key in [own, *(key for key in keys if key[0] == own[0])][:14]:
            held = losses_in_model(problem, state, arrangement_scope(problem, key))
            assert (held is not None) == (key == own)


def test_a_ring_binds_in_the_model():
    """Where every room has one place only the model knows to the foot what they take; else it is looser, never
    stricter.
    """
    corners = ((0, 0), (2, 2), (0, 3))
    rooms = tuple(only_at(data, corner) for data, corner in zip(ROOMS, corners, strict=True))
    state = (Spot(0, 0, 0), Spot(2, 2, 2), None)
    for most, fits in ((5.0, False), (6.0, True)):
        assert (losses_in_model(tiny("trips", rooms=rooms, rings=(ring(most),)), state) is not None) == fits
    problem = tiny("trips", rings=(ring(3.0),))
    kept = [state for state in list(every_value("trips"))[::60] if Limits.of(problem).are_kept(state)]
    assert len(kept) > 10
    assert all(losses_in_model(problem, state) is not None for state in kept)
