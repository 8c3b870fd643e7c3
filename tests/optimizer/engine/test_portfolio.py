"""Which tours are run, and what they set aside."""

from dataclasses import replace
from functools import cache

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.engine.ideas import IdeaGrounds
from optimizer.engine.portfolio import Purse, first_tours, tour_of
from optimizer.engine.problem import Spot, build_problem
from optimizer.scenario import load_scenario

SCENARIO = load_scenario("scenarios/fernhollow-court.yaml")
STATE = tuple(Spot(0, 10, 10) if room.required else None for room in sized_rooms(SCENARIO.brief))


@cache
def built():
    """The problem of the example, made once it is asked for."""
    return build_problem(SCENARIO, sized_rooms(SCENARIO.brief), book_for("USD"))


def tours(count, best=()):
    """The first tours of a search."""
    purse = Purse(built())
    return [tour_of(built(), turn, seed=5, purse=purse, best=best) for turn in range(count)]


def test_the_same_turn_is_the_same_tour():
    """Whatever came before, and no two turns share a seed."""
    assert tours(30) == tours(30)
    assert len({tour.seed for tour in tours(30)}) == 30


def test_every_optional_room_is_left_out_and_insisted_on():
    """Within as many cycles as there are optional rooms, besides tours that insist on all of them."""
    found, optional = tours(6 * len(built().optional)), set(built().optional)
    assert {room for tour in found for room in tour.without} == optional
    alone = {room for tour in found for room in tour.insist if len(tour.insist) == 1}
    assert alone == optional
    assert frozenset(optional) in {tour.insist for tour in found}
    assert frozenset() in {tour.insist for tour in found if not tour.without}


def test_some_tours_start_from_the_best():
    """Each of the best in turn; without any, from nothing."""
    other = (None, *STATE[1:])
    starts = [tour.start for tour in tours(24, best=(STATE, other))]
    assert STATE in starts
    assert other in starts
    assert None in starts
    assert {tour.start for tour in tours(24)} == {None}


def test_in_one_tour_of_six_a_kitchen_may_wait():
    """A tour that is free: none that insists on rooms, or leaves some out."""
    found = tours(24)
    waiting = [tour for tour in found if tour.may_wait]
    assert len(waiting) == len(found) / 6
    assert not any(tour.insist or tour.without or tour.start for tour in waiting)


def test_one_tour_in_four_follows_an_idea():
    """Each idea of the yard in turn, with every room; the others are the tours that there would be without ideas."""
    ideas = IdeaGrounds(built())
    assert len(ideas.offered) > 3
    purse, count = Purse(built()), 4 * len(ideas.offered)
    found = [tour_of(built(), turn, seed=5, purse=purse, best=(), ideas=ideas) for turn in range(count)]
    led = [tour for tour in found if tour.ground is not None]
    assert [tour.ground.idea for tour in led] == list(ideas.offered)
    assert [found.index(tour) % 4 for tour in led] == [3] * len(led)
    assert {tour.insist for tour in led} == {frozenset(built().optional)}
    others = [replace(tour, seed=0) for tour in found if tour.ground is None]
    assert others == [replace(tour, seed=0) for tour in tours(3 * len(ideas.offered))]
    assert len({tour.seed for tour in found}) == count


def test_an_idea_starts_from_a_known_layout_or_from_nothing():
    """In turns; what stands off its ground is taken up."""
    ideas, purse = IdeaGrounds(built()), Purse(built())
    cycle = 4 * len(ideas.offered)
    at = 4 * ideas.offered.index("out in the garden") + 3
    first, second = (
        tour_of(built(), turn, seed=5, purse=purse, best=(STATE,), ideas=ideas) for turn in (at, at + cycle)
    )
    assert STATE[0] is not None
    assert first.start == (None,) * len(STATE)
    assert second.start is None
    kept = tour_of(built(), 3, seed=5, purse=purse, best=((None, *STATE[1:]),), ideas=ideas)
    assert kept.start == (None, *STATE[1:])


def test_ideas_that_are_met_have_no_tour():
    """All tours that follow an idea follow the one that is left."""
    ideas, purse = IdeaGrounds(built()), Purse(built())
    met = frozenset(ideas.offered[1:])
    led = [tour_of(built(), 4 * n + 3, seed=5, purse=purse, best=(), ideas=ideas, met=met) for n in range(4)]
    assert {tour.ground.idea for tour in led} == {ideas.offered[0]}


def test_where_no_idea_has_ground_tours_are_as_without():
    """A yard whose brief has no table."""
    rooms = tuple(room for room in sized_rooms(SCENARIO.brief) if room.rules.kind == "nook")
    brief = replace(SCENARIO.brief, rooms=tuple(r for r in SCENARIO.brief.rooms if r.kind == "nook"), relations=())
    problem = build_problem(replace(SCENARIO, brief=brief), rooms, book_for("USD"))
    ideas, purse = IdeaGrounds(problem), Purse(problem)
    assert ideas.offered == ()
    assert ideas.of_turn(0, ()) is None
    with_ideas = [tour_of(problem, n, seed=5, purse=purse, best=(), ideas=ideas) for n in range(12)]
    assert with_ideas == [tour_of(problem, n, seed=5, purse=purse, best=()) for n in range(12)]


def test_first_tours_start_from_each_layout_given():
    """What is known first, from nothing last."""
    assert [tour.start for tour in first_tours(1, (STATE,), 5)] == [STATE, None]
    assert {tour.set_aside for tour in first_tours(1, (STATE,), 5)} == {5}


def test_the_purse_learns_what_ways_cost():
    """First shares of the estimate, then the quartiles of what was priced, the middle one most often first."""
    purse = Purse(built())
    assert purse.set_aside(0) == pytest.approx(0.6 * built().guide.ways, abs=1)
    rooms = purse.of_rooms(STATE)
    for beyond in (1000, 2000, 3000, 4000, 5000):
        purse.learn(STATE, rooms + beyond)
    assert [purse.set_aside(turn) for turn in range(3)] == [3000, 1500, 4500]
    assert purse.likely(STATE) == 3000


def test_the_purse_tells_places_apart():
    """Where ways were dear they will likely be; before enough is priced all are taken for alike."""
    purse = Purse(built())
    near, far = (tuple(spot and replace(spot, x=spot.x + by) for spot in STATE) for by in (0, 60))
    for _ in range(2):
        purse.learn(near, purse.of_rooms(near) + 1000)
        purse.learn(far, purse.of_rooms(far) + 9000)
    assert purse.likely(near) == purse.likely(far) == purse.set_aside(0)
    purse.learn(far, purse.of_rooms(far) + 9000)
    assert purse.likely(near) < 3000
    assert purse.likely(far) > 7000


def test_without_a_ceiling_runs_alone_are_counted():
    """There is no budget to count against."""
    free = replace(SCENARIO, brief=replace(SCENARIO.brief, budget=replace(SCENARIO.brief.budget, ceiling=None)))
    problem = build_problem(free, sized_rooms(free.brief), book_for("USD"))
    assert problem.budget is None
    assert Purse(problem).of_rooms(STATE) < Purse(built()).of_rooms(STATE)


def test_where_nothing_was_found_as_little_as_may_be_is_set_aside():
    """Nothing while nothing is priced; then the least that ways cost, a quarter's and a half's."""
    purse = Purse(built(), is_tight=True)
    assert {purse.set_aside(turn) for turn in range(6)} == {0}
    cost = purse.of_rooms(STATE)
    for ways in (500, 100, 400, 200, 300):
        purse.learn(STATE, cost + ways)
    assert [purse.set_aside(turn) for turn in range(4)] == [100, 150, 300, 100]
