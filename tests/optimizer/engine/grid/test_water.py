"""Where water lies in a variant, and what it gets of the sun: the same as in real geometry."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.brief import SunWish
from optimizer.catalogue import Item
from optimizer.derived import Derived
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.grid.water import Window, water_off, water_window
from optimizer.layout import Layout, Placement, placed_of
from tests.yards import bathing, on_site, plain_yard, sized

WINTER = SunWish("sun", 9, 16, (12,))
YARD = on_site(plain_yard(ceiling=None), levels=())
ROOM = bathing("pool", sun=WINTER)
CONTEXT = context_of(YARD, (ROOM,))
VARIANTS = {variant.front: variant for variant in variants_of(ROOM, CONTEXT.lattice)}


@pytest.mark.parametrize(
    ("front", "window"),
    [("+y", (4, 4, 8, 6)), ("-y", (4, 8, 8, 6)), ("+x", (4, 4, 6, 8)), ("-x", (8, 4, 6, 8))],
)
def test_the_wide_deck_lies_at_the_front(front, window):
    """4 ft behind and beside the water, 8 ft in front, whichever way the room looks."""
    assert water_window(CONTEXT.lattice, ROOM, VARIANTS[front]) == Window(*window)


def test_water_off_the_grid_takes_whole_steps():
    """Water of 7 1/2 ft that begins at 4 1/4 ft takes the eight steps that it reaches into."""
    (choice,) = ROOM.choices
    room = replace(ROOM, choices=(replace(choice, furniture=(Item("water", 4.25, 4.5, 7.5, 5.0),)),))
    assert water_window(CONTEXT.lattice, room, VARIANTS["+y"]) == Window(4, 4, 8, 6)


def test_of_any_other_room_all_counts():
    """A reserve and a pool whose water is not drawn are water from edge to edge."""
    for room in (sized("later", "reserve", 8, 10), sized("plain", "pool", 8, 10)):
        (variant, *_) = variants_of(room, CONTEXT.lattice)
        assert water_window(CONTEXT.lattice, room, variant) == Window(0, 0, 8, 10)


def test_only_water_is_kept_off():
    """One blocked cell forbids just the places at which the water would lie on it."""
    blocked = np.zeros((CONTEXT.lattice.rows, CONTEXT.lattice.columns), dtype=bool)
    blocked[20, 30] = True
    free = water_off(CONTEXT.lattice, ROOM, VARIANTS["-y"], blocked)
    at = np.argwhere(~free[: CONTEXT.lattice.rows - 17, : CONTEXT.lattice.columns - 15])
    assert {tuple(place) for place in at} == {(y, x) for y in range(7, 13) for x in range(19, 27)}


@pytest.mark.parametrize("front", VARIANTS)
def test_hours_are_those_at_the_water(front):
    """At 20 places of every front the table has the hours of the check, which samples the water."""
    variant, random = VARIANTS[front], np.random.default_rng(5)
    hours, lattice = mean_hours(CONTEXT, ROOM, variant), CONTEXT.lattice
    size = (variant.width * lattice.step_ft, variant.depth * lattice.step_ft)
    for row, column in zip(*(random.integers(0, n, 20) for n in hours.shape), strict=True):
        posed = Placement("pool", "plain", lattice.x_ft(column), lattice.y_ft(row), *size, front)
        derived = Derived(YARD, placed_of((ROOM,), CONTEXT.pose.layout_back(Layout((posed,)))))
        assert hours[row, column] == pytest.approx(derived.sun_h(derived.placed.rooms[0]), abs=0.02)
