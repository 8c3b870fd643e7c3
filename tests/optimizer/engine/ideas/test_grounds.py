"""Which ideas a yard offers, and where they leave rooms to stand."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.catalogue import IDEAS, book_for, sized_rooms
from optimizer.engine.ideas import IdeaGrounds, Places
from optimizer.engine.problem import Spot, build_problem, state_of
from optimizer.layout import Layout, Placement
from optimizer.scenario import load_scenario
from tests.yards import bathing

TABLE = 0
WITHOUT_POOL = tuple(name for name in IDEAS if name != "round the water")


def problem_of(name, **site):
    """The problem of a demonstration yard, with parts of its site replaced."""
    scenario = load_scenario(f"scenarios/{name}.yaml")
    scenario = replace(scenario, site=replace(scenario.site, **site))
    return build_problem(scenario, sized_rooms(scenario.brief), book_for(scenario.currency))


@pytest.fixture(scope="module")
def fernhollow():
    """A yard with a roof, a slope and open sides: it offers every idea that asks for no pool."""
    return problem_of("fernhollow-court")


def rooms_of(problem, ground):
    """Names of the rooms that a ground speaks of."""
    return {problem.rooms[room].name for room, _ in ground.cells}


def test_a_yard_offers_the_ideas_for_which_there_is_ground(fernhollow):
    """No roof without a structure, no steps down on flat ground, nothing beside a house from wall to wall."""
    assert IdeaGrounds(fernhollow).offered == WITHOUT_POOL
    bare = problem_of("fernhollow-court", structures=(), levels=())
    assert set(WITHOUT_POOL) - set(IdeaGrounds(bare).offered) == {"under the old roof", "stepping down"}
    lacking = set(WITHOUT_POOL) - set(IdeaGrounds(problem_of("thimble-yard")).offered)
    assert lacking == {"under the old roof", "stepping down", "beside the house"}


def test_ground_is_where_the_rules_let_a_room_stand(fernhollow):
    """Of every idea, and some of it for every room that it speaks of; different ways in turn."""
    ideas = IdeaGrounds(fernhollow)
    for name in ideas.offered:
        for again in range(6):
            ground = ideas.ground(name, again)
            assert ground.idea == name
            found = {}
            for (room, v), cells in ground.cells.items():
                assert not (cells & ~fernhollow.rooms[room].allowed[v]).any()
                found[room] = found.get(room, False) or bool(cells.any())
            assert all(found.values())
    named = [rooms_of(fernhollow, ideas.ground("under the old roof", again)) for again in range(3)]
    assert named == [{"gathering area"}, {"outdoor kitchen"}, {"gathering area"}]
    apart = [rooms_of(fernhollow, ideas.ground("a court and a garden room", again)) for again in range(2)]
    assert apart == [{"gathering area", "fire feature"}, {"gathering area", "quiet nook"}]
    axes = [frozenset(rooms_of(fernhollow, ideas.ground("along one axis", again))) for again in range(6)]
    assert {"gathering area", "fire feature"} in axes
    assert {"gathering area", "water reserve"} in axes


def test_each_idea_has_its_turn(fernhollow):
    """One after another, then again."""
    ideas = IdeaGrounds(fernhollow)
    names = [ideas.of_turn(turn, ()).idea for turn in range(2 * len(WITHOUT_POOL))]
    assert names == [*WITHOUT_POOL, *WITHOUT_POOL]


def test_an_idea_that_is_met_has_no_turn(fernhollow):
    """While another is not; once all are met, each has its turn again."""
    ideas, (first, second, *_) = IdeaGrounds(fernhollow), WITHOUT_POOL
    left = frozenset(WITHOUT_POOL) - {first, second}
    assert [ideas.of_turn(turn, (), left).idea for turn in range(4)] == [first, second, first, second]
    assert [ideas.of_turn(turn, (), frozenset(WITHOUT_POOL)).idea for turn in range(2)] == [first, second]


def test_the_table_is_held_where_a_layout_has_it(fernhollow):
    """In the first layout in which it stands at the house: about there it stays, and the rest is asked of it."""
    ideas, rest = IdeaGrounds(fernhollow), (None,) * (len(fernhollow.rooms) - 1)
    layout = Layout((Placement("gathering area", "table for ten and lounge", 34, 64, 24, 18, "+y"),))
    (near, *_), far = state_of(fernhollow, layout), _far_from_house(fernhollow)
    turn = WITHOUT_POOL.index("one court at the house") + 2 * len(WITHOUT_POOL)
    ground, free = (ideas.of_turn(turn, best) for best in (((far, *rest), (near, *rest)), ()))
    held = [cells for (room, _), cells in ground.cells.items() if room == TABLE]
    assert ground.cells[TABLE, near.variant][near.y, near.x]
    # Two feet each way, from corners a foot apart.
    assert 0 < max(int(cells.sum()) for cells in held) <= 25
    others = [key for key in ground.cells if key[0] != TABLE]
    assert others
    assert not any((ground.cells[key] & ~free.cells[key]).any() for key in others)
    assert sum(int(ground.cells[key].sum()) for key in others) < sum(int(free.cells[key].sum()) for key in others)


def test_where_nothing_is_left_round_a_table_it_is_not_held(fernhollow):
    """A layout that leaves the idea no ground is passed over, not the idea."""
    ideas, rest = IdeaGrounds(fernhollow), (None,) * (len(fernhollow.rooms) - 1)
    turn = WITHOUT_POOL.index("one court at the house")
    corner = next(
        spot for spot in _at_house(fernhollow) if ideas.ground("one court at the house", 0, ideas._shape(spot)) is None
    )
    ground, free = ideas.of_turn(turn, ((corner, *rest),)), ideas.of_turn(turn, ())
    assert {key: int(cells.sum()) for key, cells in ground.cells.items()} == {
        key: int(cells.sum()) for key, cells in free.cells.items()
    }


def _at_house(problem):
    """Spots of the first variant of the table at the house."""
    cells = Places(problem.context).at_house(problem.rooms[TABLE].variants[0]) & problem.rooms[TABLE].allowed[0]
    return [Spot(0, int(x), int(y)) for y, x in np.argwhere(cells)]


def _far_from_house(problem):
    """A spot of the first variant of the table that is not."""
    cells = ~Places(problem.context).at_house(problem.rooms[TABLE].variants[0]) & problem.rooms[TABLE].allowed[0]
    y, x = np.argwhere(cells)[0]
    return Spot(0, int(x), int(y))


def test_a_pool_offers_a_place_round_it(fernhollow):
    """Table and pool are told where to stand, the pool near a table that is held."""
    scenario = fernhollow.context.scenario
    wishes = tuple(replace(wish, kind="pool") if wish.kind == "reserve" else wish for wish in scenario.brief.rooms)
    rooms = (*sized_rooms(scenario.brief)[:4], bathing("water reserve"))
    scenario = replace(scenario, brief=replace(scenario.brief, rooms=wishes, relations=()))
    ideas = IdeaGrounds(build_problem(scenario, rooms, book_for("USD")))
    assert ideas.offered[0] == "round the water"
    assert rooms_of(ideas.problem, ideas.ground("round the water")) == {"gathering area", "water reserve"}
