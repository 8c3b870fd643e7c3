"""Tables of sight over positions against the check, one layout at a time, on a yard that is turned and slopes."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.brief import Relation
from optimizer.catalogue import book_for, sized_rooms
from optimizer.check.sight import sight_share
from optimizer.instance import build_instance
from optimizer.instance.rules.relations import ON_THING
from optimizer.instance.sight import centres_at, look_in, shares_from_site, view_of
from optimizer.layout import Layout, Placement, placed_of, rectangle
from optimizer.scenario import load_scenario
from optimizer.search import board_of
from optimizer.search.sight import Sides, kept_looks
from optimizer.search.state import Spot

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
INSTANCE = build_instance(SCENARIO, ROOMS, book_for("USD"))
CONTEXT, BOARD = INSTANCE.context, board_of(INSTANCE)
NAMES = [room.name for room in CONTEXT.rooms]


def standing(random, room):
    """Any variant of a room at any allowed spot: its index, the spot and its placement on the plan."""
    index = int(random.integers(len(INSTANCE.rooms[room].variants)))
    variant, lattice = INSTANCE.rooms[room].variants[index], CONTEXT.lattice
    y, x = (int(at) for at in random.choice(np.argwhere(INSTANCE.rooms[room].allowed[index])))
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
        variant = INSTANCE.rooms[room].variants[spot.variant]
        screened = ROOMS[room].choices[variant.choice].is_screened
        table = shares_from_site(CONTEXT, look, (variant.width, variant.depth), screened=screened)
        share = sight_share(SCENARIO, placed_of(ROOMS, Layout((placement,))), relation)
        assert table[spot.y, spot.x] == pytest.approx(share)
        thing = CONTEXT.thing(relation.between[1])
        kept = ON_THING[relation.kind](CONTEXT, relation, variant, thing, True)  # noqa: FBT003 - the rules' own order
        assert kept[spot.y, spot.x] == look.keeps(share)
        found.append(share)
    assert max(found) > 0.5


@pytest.mark.parametrize("moving_end", [0, 1])
@pytest.mark.parametrize("relation", ROOM_TO_ROOM)
def test_room_and_room(relation, moving_end):
    """The explorer keeps a position where the check keeps the relation, whichever room moves."""
    random, verdicts = np.random.default_rng(5), set()
    moving, other = (NAMES.index(relation.between[end]) for end in (moving_end, 1 - moving_end))
    pair = BOARD.pairs[moving][other]
    view = view_of(CONTEXT, relation, pair)
    for _ in range(60):
        (spot, placement), (there, placed) = standing(random, moving), standing(random, other)
        if rectangle(placement).buffer(0.5).intersects(rectangle(placed)):
            continue
        variants = [INSTANCE.rooms[room].variants[at.variant] for room, at in ((moving, spot), (other, there))]
        asked = np.zeros((len(BOARD.ys), len(BOARD.xs)), dtype=bool)
        at = (spot.y - BOARD.row, spot.x - BOARD.column)
        asked[at] = True
        kept = kept_looks(BOARD, view, Sides(*variants, there, moving_looks=moving_end == 0), asked)
        share = sight_share(SCENARIO, placed_of(ROOMS, Layout((placement, placed))), relation)
        assert kept[at] == view.look.keeps(share)
        assert kept[~asked].all()
        verdicts.add(bool(kept[at]))
    assert verdicts == {True, False}


def test_centres():
    """Corners count in steps from the grid's origin, and half a room further on is its middle."""
    lattice = CONTEXT.lattice
    (middle,) = centres_at(CONTEXT, (8, 6), np.array([3]), np.array([2]))
    assert tuple(middle) == (lattice.x_ft(7), lattice.y_ft(5))
