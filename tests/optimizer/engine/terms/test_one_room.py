"""One room alone, wherever it stands: what each weight adds to the engine's count is what the exact figures say."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from optimizer.brief import Relation
from optimizer.catalogue import rates
from optimizer.concepts.case import Case
from optimizer.engine.explorer import board_of
from optimizer.engine.problem import Spot, build_problem, layout_of, rect_of
from optimizer.scenario import load_scenario

CENTS = 100
GATHERING = 0
PLAIN = load_scenario("scenarios/fernhollow-court.yaml")
WISHES = (
    Relation(("quiet nook", "house"), "apart", at_least_ft=25, wish=3),
    Relation(("fire feature", "house"), "near", within_ft=20, wish=1.5),
    Relation(("outdoor kitchen", "family door"), "in_view", wish=2),
)


def yard():
    """The example on level ground, where shadows are known exactly, on a coarse grid, with wishes to things and a wind
    towards the house.
    """
    options = replace(PLAIN.brief.options, grid_step=2.0)
    brief = replace(PLAIN.brief, relations=(*PLAIN.brief.relations, *WISHES), options=options)
    return replace(PLAIN, site=replace(PLAIN.site, levels=(), wind_from_deg=40.0), brief=brief)


CASE = Case.of(yard())


@cache
def weighed(**weights):
    """The problem with other weights, and its board."""
    brief = replace(CASE.scenario.brief, weights=replace(CASE.scenario.brief.weights, **weights))
    problem = build_problem(replace(CASE.scenario, brief=brief), CASE.rooms, CASE.book)
    return problem, board_of(problem)


def counted(problem, board, room, spot):
    """What a room costs at a spot while it is alone, in money."""
    return (
        board.windows[room][spot.variant].at(spot, learned=False) + problem.order.loss([rect_of(problem, room, spot)])
    ) / CENTS


def left_out(room):
    """What the score charges for the trips to all other rooms, in money."""
    others = {other.name for number, other in enumerate(CASE.rooms) if number != room}
    brief = CASE.scenario.brief
    return brief.weights.walking * rates().walking * rates().stands_in * brief.ends_at(others)


def drawn(count):
    """Rooms with spots where they may stand."""
    random = np.random.default_rng(6)
    for room, data in enumerate(weighed()[0].rooms):
        for _ in range(count):
            v = int(random.integers(len(data.variants)))
            places = np.argwhere(data.allowed[v])
            if len(places):
                y, x = random.choice(places).tolist()
                yield room, Spot(v, x, y)


@pytest.fixture(scope="module")
def alone():
    """Spots with the exact losses by name, in money."""
    found = []
    for room, spot in drawn(7):
        state = tuple(spot if other == room else None for other in range(len(CASE.rooms)))
        found.append((room, spot, dict(CASE.in_full(layout_of(weighed()[0], state)).losses)))
    return found


@pytest.mark.parametrize("name", ["order", "sun", "sight", "smoke"])
def test_what_a_weight_adds_is_the_exact_loss(name, alone):
    """To the rounding of rates, and of the sun to cells of 2 ft; somewhere it is something. Order has the doors without a
    terrace in it, which the gathering alone can be, and the roof that stands empty, which the gathering carries.
    """
    without = weighed(**{name: 0.0})
    adds = [counted(*weighed(), room, spot) - counted(*without, room, spot) for room, spot, _ in alone]
    terraces = [losses["terraces"] if name == "order" and room == GATHERING else 0.0 for room, _, losses in alone]
    carried = weighed()[0].rooms[GATHERING].absent_place / CENTS
    roofs = [losses["roofs"] - (carried if room != GATHERING else 0.0) for room, _, losses in alone]
    exact = [
        losses[name] + terrace + (roof if name == "order" else 0.0)
        for (_, _, losses), terrace, roof in zip(alone, terraces, roofs, strict=True)
    ]
    assert adds == pytest.approx(exact, abs=15.0 if name == "sun" else 2.0)
    assert max(exact) > 10


def test_walking_is_counted_as_it_is_walked(alone):
    """Straight ways and detours: on average to a few in a hundred, for no place far off."""
    without = weighed(walking=0.0)
    pairs = [
        (counted(*weighed(), room, spot) - counted(*without, room, spot), losses["walking"] - left_out(room))
        for room, spot, losses in alone
    ]
    walked = [(added, exact) for added, exact in pairs if exact > 0]
    assert len(walked) > 8
    assert sum(added for added, _ in walked) == pytest.approx(sum(exact for _, exact in walked), rel=0.07)


def test_money_and_worth_are_those_of_the_choice(alone):
    """What is spent on the room counts at its rate and what its choice lacks at the worth of a point; doing without it
    lacks its most.
    """
    problem, _ = weighed()
    rate = CASE.scenario.brief.weights.cost * rates().cost
    free = weighed(cost=0.0)[0]
    for room, spot, losses in alone:
        data = problem.rooms[room]
        spent = (data.losses[spot.variant] - free.rooms[room].losses[spot.variant]) / CENTS
        price = problem.budget.uses[room][spot.variant] / CENTS
        assert spent == pytest.approx(rate * price, abs=0.02)
        others = sum(other.absent_loss - other.absent_place for other in problem.rooms if other is not data)
        lacking = others + free.rooms[room].losses[spot.variant]
        assert lacking / CENTS == pytest.approx(losses["worth"] + left_out(room), abs=1.0)
