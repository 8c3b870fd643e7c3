"""Guesses of what the judge will say of a place: at a door's steps, and of the kitchen's walk."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.catalogue import Item
from optimizer.check.case import CheckCase
from optimizer.check.steps import steps_at_doors
from optimizer.derived import Derived
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
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


def test_a_kitchen_far_round_from_its_door_is_doubted():
    """A wall of 28 ft beside the door: what lies 6 ft behind it is over 40 ft on foot, what lies before it is not."""
    wall = Building("garden wall", ((26, 12), (27, 12), (27, 36), (26, 36)))
    yard = on_site(YARD, buildings=(*PLAIN_SITE.buildings, wall))
    rooms = plain_rooms()
    context = context_of(yard, rooms)
    cooker = rooms[1]
    variant = next(v for v in variants_of(cooker, context.lattice) if v.front == "+y")
    doubted = PARTS["kitchen_walk"].doubts(context, cooker, variant)
    posed = [
        context.pose.layout(Layout((Placement("cooker", "plain", x, 16.0, 8.0, 6.0, "+y"),))).placements[0]
        for x in (14.0, 32.0)
    ]
    assert [p.front for p in posed] == ["+y", "+y"]
    cells = [
        (
            int((p.y_ft - context.lattice.y0_ft) / context.lattice.step_ft),
            int((p.x_ft - context.lattice.x0_ft) / context.lattice.step_ft),
        )
        for p in posed
    ]
    assert [bool(doubted[cell]) for cell in cells] == [False, True]
