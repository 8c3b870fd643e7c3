"""Tables of sight over positions against the check, one layout at a time, on a yard that is turned and slopes."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from optimizer.brief import Relation
from optimizer.catalogue import book_for, sized_rooms
from optimizer.check.sight import sight_share
from optimizer.engine.explorer.sight import loss_of_sight, sightings
from optimizer.engine.grid.sight_shares import Extent, centres_at, extent_of, look_in, samples, shares_from_site
from optimizer.engine.problem import Spot, build_problem
from optimizer.engine.rules import RELATIONS
from optimizer.fields.sight import FEW, MANY
from optimizer.layout import Layout, Placement, placed_of, rectangle
from optimizer.scenario import load_scenario

PLAIN = load_scenario("scenarios/fernhollow-court.yaml")
NEAR = 0.05  # samples against areas: so far apart at the most, where a share is near what is asked
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
NAMES = [room.name for room in ROOMS]


@cache
def built():
    """The problem with these relations, made once it is asked for."""
    return build_problem(SCENARIO, ROOMS, book_for("USD"))


def standing(random, room):
    """Any variant of a room at any allowed spot: its index, the spot and its placement on the plan."""
    index = int(random.integers(len(built().rooms[room].variants)))
    variant, lattice = built().rooms[room].variants[index], built().context.lattice
    y, x = (int(at) for at in random.choice(np.argwhere(built().rooms[room].allowed[index])))
    size = (variant.width * lattice.step_ft, variant.depth * lattice.step_ft)
    label = ROOMS[room].choices[variant.choice].label
    posed = Placement(NAMES[room], label, lattice.x_ft(x), lattice.y_ft(y), *size, variant.front or "+y")
    return Spot(index, x, y), built().context.pose.layout_back(Layout((posed,))).placements[0]


@pytest.mark.parametrize("relation", TO_SITE)
def test_room_and_site(relation):
    """Every sampled position, screened choices too, has about the check's share, and the table says when it is enough."""
    random, room, found = np.random.default_rng(4), NAMES.index(relation.between[0]), []
    look = look_in(built().context, relation)
    for _ in range(40):
        spot, placement = standing(random, room)
        variant = built().rooms[room].variants[spot.variant]
        screened = ROOMS[room].choices[variant.choice].is_screened
        table = shares_from_site(built().context, look, extent_of(variant), screened=screened)
        share = sight_share(SCENARIO, placed_of(ROOMS, Layout((placement,))), relation)
        assert table[spot.y, spot.x] == pytest.approx(share, abs=NEAR if abs(share - look.share) < NEAR else 0.2)
        thing = built().context.thing(relation.between[1])
        kept = RELATIONS[relation.kind].on_thing(built().context, relation, variant, thing)
        assert kept[spot.y, spot.x] == look.keeps(share) or abs(share - look.share) < NEAR
        found.append(share)
    assert max(found) > 0.5


@pytest.mark.parametrize("moving_end", [0, 1])
@pytest.mark.parametrize("relation", ROOM_TO_ROOM)
def test_room_and_room(relation, moving_end):
    """The explorer keeps a position where the check keeps the relation, whichever room moves."""
    random, verdicts = np.random.default_rng(5), set()
    moving, other = (NAMES.index(relation.between[end]) for end in (moving_end, 1 - moving_end))
    look = look_in(built().context, relation)
    for _ in range(60):
        (spot, placement), (there, placed) = standing(random, moving), standing(random, other)
        if rectangle(placement).buffer(0.5).intersects(rectangle(placed)):
            continue
        found = sightings(built(), moving, spot.variant, [(other, there)])
        (asked,) = [sighting for sighting in found if sighting.ask.view.look == look]
        (loss,) = loss_of_sight(built(), asked, np.array([spot.x]), np.array([spot.y]))
        share = sight_share(SCENARIO, placed_of(ROOMS, Layout((placement, placed))), relation)
        assert loss == (0 if look.keeps(share) else asked.ask.loss) or abs(share - look.share) < NEAR
        verdicts.add(bool(loss))
    assert verdicts == {True, False}


def test_centres():
    """Corners count in steps from the grid's origin, and half a room further on is its middle."""
    lattice = built().context.lattice
    (middle,) = centres_at(built().context, Extent(8, 6), np.array([3]), np.array([2]))
    assert tuple(middle) == (lattice.x_ft(7), lattice.y_ft(5))


def test_samples_of_a_disc():
    """All of the nine lie in the disc, and of many about pi / 4."""
    look, centre = look_in(built().context, TO_SITE[0]), np.array([[40.0, 30.0]])
    for parts, most in ((FEW, 9), (MANY, 26)):
        found = samples(built().context, look, (centre, Extent(12, 12, is_round=True)), parts)[0]
        middle = built().context.pose.back((40.0, 30.0))
        assert np.hypot(*(found[:, :2] - middle).T).max() <= 6 * built().context.lattice.step_ft + 1e-9
        assert len(found) == pytest.approx(most, abs=1)
