"""What is added where most rooms walk to each other takes no optimum away: against every layout of tiny containers."""

import json
from dataclasses import replace
from itertools import product
from pathlib import Path

import numpy as np
import pytest

from optimizer.engine.grid.root_rings import RootRing
from optimizer.engine.model import Scope, arrangement_scope, build_model, dense, is_dense, mirrors, whole_scope
from optimizer.engine.model import build as building
from optimizer.engine.pairs import Penalty
from optimizer.engine.problem import Spot, modelled_value
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover.solve import Effort, solve
from optimizer.engine.rules.near import Near
from optimizer.engine.terms import Order, Pull
from tests.benchmarks.published_instance import problem_of
from tests.containers import DENSE, container, least_by_hand
from tests.tiny import is_kept, spots, tiny


def least_in_model(problem, scope=None):
    """Optimum of the model."""
    return solve(build_model(problem, scope or whole_scope(problem)), Effort(linearization=2)).objective


@pytest.mark.parametrize("name", DENSE)
def test_the_optimum_stays(name):
    """The tightened and halved model has the least of all layouts."""
    problem = DENSE[name]
    assert is_dense(problem, whole_scope(problem))
    least = least_by_hand(problem)
    assert least is not None
    assert least_in_model(problem) == least


@pytest.mark.parametrize("name", DENSE)
def test_every_layout_stays_at_its_own_value(name, monkeypatch):
    """Without the halving each layout that keeps all stands in the model, and at what it counts: no cut reaches it."""
    monkeypatch.setattr(building, "break_mirrors", lambda *_: None)
    problem = DENSE[name]
    kept = [state for state in product(*(spots(data) for data in problem.rooms)) if is_kept(problem, state)]
    for state in kept[:: max(1, len(kept) // 30)]:
        built = build_model(problem, whole_scope(problem))
        for variables, spot in zip(built.rooms, state, strict=True):
            built.model.add(variables.literals[spot.variant] == 1)
            built.model.add(variables.x == spot.x)
            built.model.add(variables.y == spot.y)
        assert solve(built, Effort()).objective == modelled_value(problem, state)


def test_each_walking_pair_gets_its_floors(monkeypatch):
    """One on each axis; pairs that do not walk get none."""
    problem = DENSE["touching"]
    tight = len(build_model(problem, whole_scope(problem)).model.proto.constraints)
    monkeypatch.setattr(building, "tighten", lambda _views: None)
    assert tight == len(build_model(problem, whole_scope(problem)).model.proto.constraints) + 2 * 2


def test_a_row_is_proven_much_sooner(monkeypatch):
    """A published row of eight with what is said of rows, and without it: a fraction of the solver's work."""
    data = json.loads(Path("tests/benchmarks/instances/row-S8.json").read_text())
    problem = problem_of(data, data["container"])
    tight = solve(build_model(problem, whole_scope(problem)), Effort(linearization=2))
    monkeypatch.setattr(dense, "add_rows", lambda _views: None)
    plain = solve(build_model(problem, whole_scope(problem)), Effort(linearization=2))
    assert tight.objective == plain.objective
    assert tight.work_s < plain.work_s / 3


def test_few_trips_are_left_alone():
    """Below the share, with a room that may be left out, in an arrangement, or with a room of no size: not dense."""
    problem = container(9, 1, [[(1, 1)]] * 4, (1, 1, 0, 0, 0, 0))
    assert not is_dense(problem, whole_scope(problem))
    assert is_dense(container(9, 1, [[(1, 1)]] * 4, (1, 1, 1, 0, 0, 0)), whole_scope(problem))
    assert not is_dense(tiny("trips"), whole_scope(tiny("trips")))
    row = DENSE["a row"]
    state = (Spot(0, 0, 0), Spot(0, 3, 0), Spot(0, 4, 0))
    assert not is_dense(row, arrangement_scope(row, key_of(row, state)))
    assert not is_dense(row, Scope(((0,), (0,), None), (False,) * 3, (None,) * 3))
    assert not is_dense(row, Scope(((0,), (0,), ()), (False,) * 3, (None,) * 3))


def total_of(problem, axis):
    """Twice the line that a container is mirrored in."""
    return mirrors._mirror(problem, list(range(len(problem.rooms))), axis)


def test_a_bare_container_mirrors_itself():
    """Both ways; and half of its layouts are left."""
    problem = DENSE["a box"]
    assert (total_of(problem, 0), total_of(problem, 1)) == (4, 3)
    kept = [state for state in product(*(spots(data) for data in problem.rooms)) if is_kept(problem, state)]
    main = max(range(3), key=lambda index: (mirrors._walking(problem, index), -index))
    left = [state for state in kept if in_first_half(problem, state, main)]
    assert len(kept) / 4 <= len(left) < len(kept)
    assert sum(stands(problem, state) for state in kept) == len(left)


def in_first_half(problem, state, main):
    """Whether the middle of a room lies in the first half both ways."""
    spot = state[main]
    size = problem.rooms[main].variants[spot.variant].size
    return 2 * spot.x + size[0] <= total_of(problem, 0) and 2 * spot.y + size[1] <= total_of(problem, 1)


def stands(problem, state):
    """Whether a layout stands in the model."""
    built = build_model(problem, whole_scope(problem), with_objective=False)
    for variables, spot in zip(built.rooms, state, strict=True):
        built.model.add(variables.literals[spot.variant] == 1)
        built.model.add(variables.x == spot.x)
        built.model.add(variables.y == spot.y)
    return solve(built, Effort()).verdict == "optimal"


def with_near(problem):
    """One more thing asked of the first two rooms."""
    pair = replace(problem.pairs[0], stamps=(*problem.pairs[0].stamps, Penalty("wishes", Near(1.0, 1.0), 60)))
    return replace(problem, pairs=(pair, *problem.pairs[1:]))


def lopsided(problem, **changes):
    """A container whose second room differs."""
    return replace(problem, rooms=(problem.rooms[0], replace(problem.rooms[1], **changes), *problem.rooms[2:]))


def test_what_tells_left_from_right_is_not_halved():
    """A door to walk to, a line to keep to, a place that costs or is shut, an anchor off the middle, a front."""
    problem = DENSE["a box"]
    free, allowed = problem.rooms[1].floors[0], problem.rooms[1].allowed[0]
    dear, shut = free.copy(), allowed.copy()
    dear[0, 0], shut[0, 0] = 7, False
    off, front = (replace(problem.rooms[1].variants[0], **change) for change in ({"anchor": (1, 2)}, {"front": "+y"}))
    for told in (
        replace(problem, pulls=(Pull(0, (0, 0), 3),)),
        with_near(problem),
        lopsided(problem, floors=(dear,)),
        lopsided(problem, allowed=(shut,)),
        lopsided(problem, variants=(off,)),
        lopsided(problem, variants=(front,)),
    ):
        assert (total_of(told, 0), total_of(told, 1)) == (None, None)
        assert least_in_model(told) == least_by_hand(told)
    ringed = replace(problem, rings=(RootRing(np.eye(3, 4), 2.0),))
    assert (total_of(ringed, 0), total_of(ringed, 1)) == (None, None)
    lined = replace(problem, order=Order.over(((1,), ()), (5, 4), rate=2, disorder_rate=0))
    assert (total_of(lined, 0), total_of(lined, 1)) == (None, 3)
    assert least_in_model(lined) == least_by_hand(lined)


def test_an_arrangement_is_not_halved():
    """It has one of two mirror images only: each layout stands in the model of its own."""
    problem = DENSE["a box"]
    kept = [state for state in product(*(spots(data) for data in problem.rooms)) if is_kept(problem, state)]
    for state in kept[::9]:
        assert least_in_model(problem, arrangement_scope(problem, key_of(problem, state))) <= modelled_value(
            problem, state
        )


@pytest.mark.parametrize("absent", [0, 20, 60])
def test_rooms_that_may_be_left_out_are_halved_too(absent):
    """Also where the room in the first half is one of them."""
    problem = DENSE["a box"]
    problem = replace(problem, rooms=tuple(replace(r, required=False, absent_loss=absent) for r in problem.rooms))
    assert least_in_model(problem) == least_by_hand(problem)


def test_rooms_with_mirrors_of_their_own_are_not_halved():
    """Each in the middle of another half: no one line mirrors both."""
    problem = DENSE["a box"]
    told = lopsided(problem, allowed=(problem.rooms[1].allowed[0] & np.array([True, True, False, False])[None, :],))
    assert total_of(told, 0) is None
    assert least_in_model(told) == least_by_hand(told)
