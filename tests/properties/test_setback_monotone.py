"""Asking for more room never gives a room a place that it did not have."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.problem.build import allowed_positions
from optimizer.site import KeepOut, RootRings, Setbacks, UtilityLine
from tests.yards import on_site, plain_rooms, plain_yard, sized

ROOMS = plain_rooms(sized("pool", "reserve", 8, 8))
KEPT = (
    KeepOut("tank", ((30, 30), (34, 30), (34, 34), (30, 34)), kind="septic tank"),
    KeepOut("field", ((44, 16), (50, 16), (50, 20), (44, 20)), kind="septic field"),
    KeepOut("wire", ((0, 38), (60, 38), (60, 39), (0, 39)), allow=("reserve", "nook"), kind="overhead line"),
)
LINES = (UtilityLine("main", "water", ((0, 24), (30, 28), (30, 40))),)
DISTANCES = (
    "ahead_of_door",
    "beside_window",
    "gas_fire",
    "wood_fire",
    "utility_line",
    "septic_tank",
    "septic_field",
    "septic_field_to_water",
    "overhead_line_to_water",
)


def places(**changes):
    """Where each room may stand by itself, as arrays in the order of rooms and variants."""
    scenario = on_site(plain_yard(ceiling=None), keep_outs=KEPT, utility_lines=LINES, **changes)
    context = context_of(scenario, ROOMS)
    return [cells for room in ROOMS for cells in allowed_positions(context, room, variants_of(room, context.lattice))]


def none_added(stricter, looser):
    """Whether every place of the stricter yard is one of the looser yard."""
    return all(not np.any(one & ~other) for one, other in zip(stricter, looser, strict=True))


LENGTHS = st.floats(0, 30, allow_nan=False)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(st.sampled_from(DISTANCES), LENGTHS, LENGTHS)
def test_a_longer_distance_adds_no_place(name, one, other):
    """With one distance longer, every place left was one before."""
    short, long = sorted((one, other))
    assert none_added(places(distances=((name, long),)), places(distances=((name, short),)))


@settings(max_examples=25, deadline=None, derandomize=True)
@given(st.sampled_from(["paving", "wall", "roof", "fire", "water", "equipment"]), st.integers(0, 3), LENGTHS, LENGTHS)
def test_a_deeper_setback_adds_no_place(built, edge, one, other):
    """With one setback of one edge deeper, every place left was one before."""
    short, long = sorted((one, other))

    def setbacks(depth_ft):
        return tuple(replace(Setbacks(), **{built: depth_ft}) if i == edge else Setbacks() for i in range(4))

    assert none_added(places(setbacks=setbacks(long)), places(setbacks=setbacks(short)))


@settings(max_examples=25, deadline=None, derandomize=True)
@given(st.floats(0, 15), st.floats(0, 15), st.floats(0, 0.5), st.floats(0, 0.5))
def test_more_for_roots_adds_no_place(one, other, less, more):
    """With a larger inner ring inside the same disc, or a smaller share of the same ring, no place is added.

    The share of a ring is of its own area, so that only one of the two is changed at a time.
    """
    low, high = sorted((one, other))
    few, many = sorted((less, more))
    assert none_added(
        places(root_rings=RootRings(inner=high, paved_share=1.0)),
        places(root_rings=RootRings(inner=low, paved_share=1.0)),
    )
    assert none_added(places(root_rings=RootRings(paved_share=few)), places(root_rings=RootRings(paved_share=many)))


@pytest.mark.parametrize("name", [name for name in DISTANCES if name != "wood_fire"])
def test_each_distance_takes_some_place_away(name):
    """The other side of the claim: of every distance that binds a room here, 30 ft take places that 0 leave."""
    stricter, looser = places(distances=((name, 30.0),)), places(distances=((name, 0.0),))
    assert sum(map(np.sum, stricter)) < sum(map(np.sum, looser))
