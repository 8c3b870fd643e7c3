"""Guesses of what the judge will say of a place: at a door's steps, and of the kitchen's walk."""

from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from optimizer.brief import Relation
from optimizer.catalogue import Item
from optimizer.check.case import CheckCase
from optimizer.check.steps import steps_at_doors
from optimizer.circulation import access_of, network_of, walking_ft
from optimizer.derived import Derived
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.grid.walked_round import walked_round_ft
from optimizer.engine.problem.build import allowed_positions
from optimizer.engine.rules import PARTS
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import Building
from tests.yards import PLAIN_SITE, on_site, plain_rooms, plain_yard, sized

YARD = on_site(plain_yard(ceiling=None), structures=(), trees=())


def furnished(kind, front, *items):
    """A room of 14 by 12 ft with this furniture, in a yard of its own: its context, itself and the variants so turned."""
    room = sized("it", kind, 14, 12)
    room = replace(room, choices=(replace(room.choices[0], furniture=items),))
    context = context_of(YARD, (room,))
    return context, room, [variant for variant in variants_of(room, context.lattice) if variant.front == front]


def is_struck(context, room, variant, front, row, column):
    """Whether the check says of a place that a seat or flame stands too near to a door's steps."""
    lattice = context.lattice
    size = variant.width * lattice.step_ft, variant.depth * lattice.step_ft
    posed = Layout((Placement("it", "plain", lattice.x_ft(column), lattice.y_ft(row), *size, front),))
    placed = placed_of((room,), context.pose.layout_back(posed))
    return bool(list(steps_at_doors(CheckCase(Derived(YARD, placed)))))


def said_and_doubted(front, item):
    """What the check says of each place of a kitchen with this on its counter, and what was guessed."""
    context, room, (variant,) = furnished("kitchen", front, item)
    doubted = PARTS["steps_clear"].doubts(context, room, variant)
    (allowed,) = allowed_positions(context, room, (variant,))
    places = list(map(tuple, np.argwhere(allowed).tolist()))
    return [(is_struck(context, room, variant, front, *place), bool(doubted[place])) for place in places]


@pytest.mark.parametrize("front", ["+y", "+x", "-y"])
def test_what_stands_alike_by_both_hands_is_known_exactly(front):
    found = said_and_doubted(front, Item("bar", 0.5, 0.5, 13, 11, seats=4))
    assert all(said == doubted for said, doubted in found)
    assert (True, True) in found
    assert (False, False) in found


@pytest.mark.parametrize("front", ["+y", "+x", "-y"])
def test_a_flame_at_one_hand_is_doubted_only_where_either_hand_is_refused(front):
    """No place is doubted that holds; some that only this hand spoils are left to the judge."""
    found = said_and_doubted(front, Item("grill", 1, 2, 3, 2))
    assert (False, True) not in found
    assert (True, False) in found


def test_where_a_room_may_turn_both_ways_are_asked():
    """A place of a room that serves to no side is doubted where it would be refused whichever way it looks."""
    context, room, variants = furnished("gathering", None, Item("bench", 0.2, 0.2, 13.6, 11.6, seats=1))
    found = []
    for variant in variants:
        doubted = PARTS["steps_clear"].doubts(context, room, variant)
        (allowed,) = allowed_positions(context, room, (variant,))
        fronts = ("+x", "-x") if variant.width < variant.depth else ("+y", "-y")
        for row, column in np.argwhere(allowed).tolist()[::5]:
            both = all(is_struck(context, room, variant, front, row, column) for front in fronts)
            found.append((both, bool(doubted[row, column])))
    assert all(both == doubt for both, doubt in found)
    assert (True, True) in found


def test_nothing_is_doubted_without_seats_or_flames():
    context, room, (variant, *_) = furnished("gathering", None, Item("low table", 1, 1, 2, 2))
    assert PARTS["steps_clear"].doubts(context, room, variant) is None


WALLED = on_site(
    YARD,
    buildings=(*PLAIN_SITE.buildings, Building("garden wall", ((26, 12), (27, 12), (27, 36), (26, 36)))),
)
"""With a wall of 24 ft beside the door."""
SPOTS = list(
    product((WALLED, YARD), (3.0, 12.0, 17.0, 28.0, 33.0), (12.0, 14.0, 15.0, 20.0, 28.0), ("+x", "-x", "+y", "-y"))
)


def kitchen_at(scenario, x_ft, y_ft, front):
    """A kitchen of 8 x 6 ft alone in a yard: what the grid knows of it, the cell of its corner, and the plan."""
    rooms = plain_rooms()
    context, cooker = context_of(scenario, rooms), rooms[1]
    width_ft, depth_ft = (8.0, 6.0) if front[1] == "y" else (6.0, 8.0)
    layout = Layout((Placement("cooker", "plain", x_ft, y_ft, width_ft, depth_ft, front),))
    (posed,), lattice = context.pose.layout(layout).placements, context.lattice
    variant = next(v for v in variants_of(cooker, lattice) if v.front == posed.front)
    cell = round((posed.y_ft - lattice.y0_ft) / lattice.step_ft), round((posed.x_ft - lattice.x0_ft) / lattice.step_ft)
    return context, cooker, variant, cell, placed_of(rooms, layout)


def on_foot_ft(scenario, placed):
    """What the judge measures from the kitchen's door."""
    network = network_of(access_of(scenario.site, placed))
    return walking_ft(network, network.access.stop("kitchen door"), network.access.stop("cooker"))


def test_the_way_round_a_room_is_guessed_as_the_judge_walks_it():
    """Before or behind a wall, its front or its back to the door or the house: never over 3 ft too long, and seldom too
    short, which leaves a place to the judge.
    """
    (door,) = PLAIN_SITE.doors
    off_ft, shut = [], set()
    for scenario, *spot in SPOTS:
        context, _, variant, cell, placed = kitchen_at(scenario, *spot)
        guess = walked_round_ft(context, context.pose.point(door.at), variant)[cell]
        walked = on_foot_ft(scenario, placed)
        shut.add((bool(np.isinf(guess)), bool(np.isinf(walked))))
        off_ft += [guess - walked] if np.isfinite(walked) else []
    assert max(off_ft) <= 3.0
    assert np.mean(np.abs(off_ft) <= 3.0) >= 0.9
    assert shut == {(False, False), (True, True)}


@pytest.mark.parametrize("rule", ["kitchen_walk", "near"])
def test_a_kitchen_far_round_from_its_door_is_doubted(rule):
    """6 ft behind the wall, and with its back to the door so near the house that one walks round it; not before the wall."""
    near = Relation(("kitchen door", "cooker"), "near", within_ft=25, by="walking")
    for (x, y, front), far in {(14.0, 16.0, "+y"): False, (32.0, 16.0, "+y"): True, (17.0, 20.0, "+y"): False}.items():
        told = replace(WALLED, brief=replace(WALLED.brief, relations=(near,))) if rule == "near" else WALLED
        context, cooker, variant, cell, placed = kitchen_at(told, x, y, front)
        assert (on_foot_ft(told, placed) > 25) == far
        assert bool(PARTS[rule].doubts(context, cooker, variant)[cell]) == far


def test_only_what_must_be_near_on_foot_is_doubted():
    """Not what is measured straight, what is only wished for, and a room that is stepped on from any side."""
    kept = {"kind": "near", "within_ft": 25.0, "by": "walking"}
    for relation, room in (
        (Relation(("kitchen door", "cooker"), **{**kept, "by": "straight"}), 1),
        (Relation(("kitchen door", "cooker"), **kept, wish=1.0), 1),
        (Relation(("kitchen door", "table"), **kept), 0),
        (Relation(("oak", "cooker"), **kept), 1),
    ):
        context = context_of(on_site(plain_yard(relation, ceiling=None), structures=()), plain_rooms())
        variant = variants_of(context.rooms[room], context.lattice)[0]
        assert PARTS["near"].doubts(context, context.rooms[room], variant) is None


def test_what_lies_far_off_need_not_be_guessed():
    """Of a limit all places are known at which it may be kept, as without it."""
    (door,) = PLAIN_SITE.doors
    context, _, variant, _, _ = kitchen_at(WALLED, 14.0, 16.0, "+y")
    at = context.pose.point(door.at)
    everywhere, near = walked_round_ft(context, at, variant), walked_round_ft(context, at, variant, within_ft=12.0)
    assert np.array_equal(near[np.isfinite(near)], everywhere[np.isfinite(near)])
    assert np.isfinite(near[everywhere <= 12.0]).all()
    assert np.isfinite(near).sum() < np.isfinite(everywhere).sum()


def test_nobody_walks_between_a_room_and_the_wall_that_it_touches():
    """The way leads round the far side, though the near one is shorter."""
    (door,) = PLAIN_SITE.doors
    context, _, variant, cell, placed = kitchen_at(WALLED, 27.0, 31.0, "-y")
    guess = walked_round_ft(context, context.pose.point(door.at), variant)[cell]
    assert guess == pytest.approx(on_foot_ft(WALLED, placed), abs=3.0)
