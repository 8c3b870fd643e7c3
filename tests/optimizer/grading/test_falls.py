"""Falls of paved rooms, and what takes their water."""

from dataclasses import replace

import pytest

from optimizer.site import SpotLevel, Utility
from tests.optimizer.grading.slopes import graded, on_plane
from tests.yards import stand

TABLE = stand("table", 60, 30, 14, 12)


def fall_of(site, *placements):
    """Fall of the first room."""
    return graded(site, *placements).falls[0]


@pytest.mark.parametrize(
    ("east", "north", "side"), [(-0.03, 0, "+x"), (0.03, 0, "-x"), (0, -0.03, "+y"), (0, 0.03, "-y")]
)
def test_a_free_room_falls_with_the_ground(east, north, side):
    """The low edge is the downhill one, and the ground beyond falls away."""
    fall = fall_of(on_plane(east=east, north=north), TABLE)
    assert (fall.towards, fall.outfall, fall.slope) == (side, "open ground", 0.02)


def test_low_edge():
    """A free room's level is that of its middle: half of 12 ft at 2 % lower at the edge."""
    assert fall_of(on_plane(north=-0.03), TABLE).low_z_ft == pytest.approx(-1.08 - 0.12)


def test_low_edge_of_a_room_against_the_house():
    """A room against the house has its level there, and falls all of its depth away from it."""
    fall = fall_of(on_plane(north=-0.03, house_floor=3.0), stand("table", 36, 0, 14, 12))
    assert (fall.towards, fall.low_z_ft) == ("+y", pytest.approx(-0.18 - 0.24))


def test_never_towards_the_house():
    """Ground that falls to a house 8 ft off takes no water there: it is trapped."""
    fall = fall_of(on_plane(north=0.03, house_floor=3.0), stand("table", 25, 8, 14, 12))
    assert fall.towards != "-y"
    assert fall.outfall is None


def test_flat_ground_traps():
    """On flat ground without a drain nothing gets away."""
    assert fall_of(on_plane(), TABLE).outfall is None


@pytest.mark.parametrize(("z_ft", "outfall"), [(0.9, "drain"), (1.3, None)])
def test_a_drain(z_ft, outfall):
    """A drain takes the water where its pipe, 1.5 ft under ground, lies 1 % under the low edge: 0.4 ft at 40 ft."""
    site = replace(on_plane(), utilities=(Utility("drain", (67, 82)),))
    dipped = replace(site, levels=(*site.levels, *_dip(67, 82, z_ft)))
    fall = fall_of(dipped, TABLE)
    assert (fall.towards, fall.outfall) == ("+y", outfall) if outfall else fall.outfall is None


def _dip(x, y, z_ft):
    """A hole, or a mound, at the mouth of the drain."""
    rim = tuple(SpotLevel((x + dx, y + dy), 0.0) for dx, dy in ((-2, -2), (2, -2), (2, 2), (-2, 2)))
    return (*rim, SpotLevel((x, y), z_ft))


def test_nothing_runs_over_the_boundary():
    """A low edge 5 ft from the boundary has no 10 ft of open ground beyond."""
    assert fall_of(on_plane(east=-0.03), stand("table", 121, 30, 14, 12)).outfall is None
    assert fall_of(on_plane(east=-0.03), stand("table", 116, 30, 14, 12)).outfall == "open ground"


def test_across_a_neighbour():
    """With a level or lower room along the downhill edge the water runs across it, to that room's outfall."""
    nook, fire = stand("nook", 60, 42, 14, 8), stand("fire", 60, 50, 14, 8)
    falls = graded(on_plane(north=-0.02), TABLE, nook, fire).falls
    assert [(fall.towards, fall.outfall) for fall in falls] == [("+y", "nook"), ("+y", "fire"), ("+y", "open ground")]


def test_not_across_a_higher_neighbour():
    """A room in a hollow between two higher ones is trapped."""
    ends = stand("nook", 60, 42, 14, 20), stand("fire", 60, 10, 14, 20)
    hollow = tuple(
        SpotLevel((x, y), 3.0 if abs(y - 36) > 6 else 0.0) for x in (-50, 150) for y in (-50, 29, 30, 42, 43, 150)
    )
    falls = graded(replace(on_plane(), levels=hollow), TABLE, *ends).falls
    assert falls[0].outfall is None
