"""Tables of sight over positions against the check, one layout at a time, on a yard that is turned and slopes."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.brief import Relation
from optimizer.catalogue import book_for, sized_rooms
from optimizer.check.sight import sight_share
from optimizer.engine.explorer.sight import loss_of_sight, sightings
from optimizer.engine.grid.sight_shares import centres_at, look_in, shares_from_site
from optimizer.engine.problem import Spot, build_problem
from optimizer.engine.rules import RELATIONS
from optimizer.layout import Layout, Placement, placed_of, rectangle
from optimizer.scenario import load_scenario

PLAIN = load_scenario("scenarios/fernhollow-court.yaml")
ROOM_TO_ROOM = (
    Relation(("quiet nook", "water reserve"), "in_view", wish=1),
    Relation(("fire feature", "water reserve"), "out_of_view", wish=1, eye="standing", share=0.3),
)
TO_SITE = (
    Relation(("water reserve", "neighbour window"), "out_of_view", wish=2),
    Relation(("quiet nook", "rear fence"), "in_view", wish=1),
    Relation(("outdoor kitchen", "family door"), "in_view", wish=1, share=0.7),
)
SCENARIO = replace(PLAIN, brief=replace(PLAIN.brief, relations=(*TO_SITE, *ROOM_TO_ROOM)))
ROOMS = sized_rooms(SCENARIO.brief)
PROBLEM = build_problem(SCENARIO, ROOMS, book_for("USD"))
CONTEXT = PROBLEM.context
NAMES = [room.name for room in CONTEXT.rooms]


def standing(random, room):
    """Any variant of a room at any allowed spot: its index, the spot and its placement on the plan."""
    index = int(random.integers(len(PROBLEM.rooms[room].variants)))
    variant, lattice = PROBLEM.rooms[room].variants[index], CONTEXT.lattice
    y, x = (int(at) for at in random.choice(np.argwhere(PROBLEM.rooms[room].allowed[index])))
    size = (variant.width * lattice.step_ft, variant.depth * lattice.step_ft)
    label = ROOMS[room].choices[variant.choice].label
    posed = Placement(NAMES[room], label, lattice.x_ft(x), lattice.y_ft(y), *size, variant.front or "+y")
    return Spot(index, x, y), CONTEXT.pose.layout_back(Layout((posed,))).placements[0]


@pytest.mark.parametrize("relation", TO_SITE)
def test_room_and_site(relation):
    """Every sampled position, screened choices too, has the check's share, and the table says when it is enough."""
    random, room, found = np.random.default_rng(4), NAMES.index(relation.between[0]), []
    look = look_in(CONTEXT, relation)
    for _ in range(40):
        spot, placement = standing(random, room)
        variant = PROBLEM.rooms[room].variants[spot.variant]
        screened = ROOMS[room].choices[variant.choice].is_screened
        table = shares_from_site(CONTEXT, look, (variant.width, variant.depth), screened=screened)
        share = sight_share(SCENARIO, placed_of(ROOMS, Layout((placement,))), relation)
        assert table[spot.y, spot.x] == pytest.approx(share)
        thing = CONTEXT.thing(relation.between[1])
        kept = RELATIONS[relation.kind].on_thing(CONTEXT, relation, variant, thing)
        assert kept[spot.y, spot.x] == look.keeps(share)
        found.append(share)
    assert max(found) > 0.5


@pytest.mark.parametrize("moving_end", [0, 1])
@pytest.mark.parametrize("relation", ROOM_TO_ROOM)
def test_room_and_room(relation, moving_end):
    """The explorer keeps a position where the check keeps the relation, whichever room moves."""
    random, verdicts = np.random.default_rng(5), set()
    moving, other = (NAMES.index(relation.between[end]) for end in (moving_end, 1 - moving_end))
    look = look_in(CONTEXT, relation)
    for _ in range(60):
        (spot, placement), (there, placed) = standing(random, moving), standing(random, other)
        if rectangle(placement).buffer(0.5).intersects(rectangle(placed)):
            continue
        found = sightings(PROBLEM, moving, spot.variant, [(other, there)])
        (asked,) = [sighting for sighting in found if sighting.ask.view.look == look]
        (loss,) = loss_of_sight(PROBLEM, asked, np.array([spot.x]), np.array([spot.y]))
        share = sight_share(SCENARIO, placed_of(ROOMS, Layout((placement, placed))), relation)
        assert loss == (0 if look.keeps(share) else asked.ask.loss)
        verdicts.add(bool(loss))
    assert verdicts == {True, False}


def test_centres():
    """Corners count in steps from the grid's origin, and half a room further on is its middle."""
    lattice = CONTEXT.lattice
    (middle,) = centres_at(CONTEXT, (8, 6), np.array([3]), np.array([2]))
    assert tuple(middle) == (lattice.x_ft(7), lattice.y_ft(5))
