"""Where smoke goes."""

from dataclasses import replace

import numpy as np
import pytest
from shapely import box

from optimizer.fields.smoke import SmokedPlace, door_smoke, openings_to_air, smoke_factor, smoke_reach_ft, smoke_share
from optimizer.fields.wind import SECTORS
from optimizer.site import Door, Place, WindRose
from tests.yards import PLAIN_SITE

DOT = SmokedPlace("dot", box(-1e-6, -1e-6, 1e-6, 1e-6))


def blown(**shares):
    """The plain site with wind from these sectors."""
    return replace(PLAIN_SITE, wind_rose=WindRose(tuple(shares.get(name, 0.0) for name in SECTORS)))


def at(site, source, place, *points):
    """Shares for sources at points."""
    return smoke_share(site, source, place, *np.array(points, dtype=float).T)


def test_straight_downwind_and_beside_it():
    """West wind. 20 ft west of the place: all of it. At 22.5 deg off the axis half of the sector's wind still brings
    smoke (from 270 to 281.25 of 258.75 to 281.25), at 34 deg none; east of the place none."""
    angles = np.radians([0, 22.5, 34, 180])
    points = [(-20 * np.cos(a), 20 * np.sin(a)) for a in angles]
    assert at(blown(W=0.8), "wood", DOT, *points) == pytest.approx([0.8, 0.4, 0, 0], abs=1e-5)


def test_wind_from_all_round():
    """Even wind without calm: a point lies in smoke of 45 degrees for 45/360 = 0.125 of the time wherever it is."""
    even = blown(**dict.fromkeys(SECTORS, 1 / 16))
    assert at(even, "wood", DOT, (9, 0), (-3, 7), (0, -20)) == pytest.approx([0.125] * 3, abs=1e-5)


def test_a_wide_place_is_met_more_often():
    """A square of 20 ft at 10 ft from its edge shows 90 degrees: (45 + 90) / 360 of even wind."""
    even = blown(**dict.fromkeys(SECTORS, 1 / 16))
    square = SmokedPlace("square", box(10, -10, 30, 10))
    assert at(even, "wood", square, (0, 0)) == pytest.approx([135 / 360])
    assert at(even, "wood", square, (20, 5)) == pytest.approx([1.0])


@pytest.mark.parametrize(("source", "reach_ft", "factor"), [("wood", 50, 1.0), ("grill", 25, 0.5), ("gas", 10, 0.1)])
def test_reach_by_source(source, reach_ft, factor):
    """Wood 50 ft, grill 25, gas 10 (common practice, no source), and what each counts."""
    assert (smoke_reach_ft(source), smoke_factor(source)) == (reach_ft, factor)
    near, far = at(blown(W=0.5), source, DOT, (-reach_ft, 0), (-reach_ft - 0.01, 0))
    assert (near, far) == pytest.approx((0.5, 0), abs=1e-5)


def test_the_plan_may_lie_askew():
    """With +y to the east, west wind blows along +y."""
    askew = replace(blown(W=1), place=Place(40, -83, "America/New_York", plan_up_bearing_deg=90))
    assert at(askew, "wood", DOT, (0, -20), (-20, 0)) == pytest.approx([1, 0])


def test_no_wind_no_smoke():
    """Without wind data every share is 0, in the shape of the points."""
    assert door_smoke(PLAIN_SITE, "wood", np.zeros((2, 3)), np.ones((2, 3))).tolist() == [[0] * 3] * 2


def test_openings_are_doors_and_windows_that_open():
    """A fixed window is no opening."""
    (building,) = PLAIN_SITE.buildings
    fixed = replace(building, windows=tuple(replace(window, opens=False) for window in building.windows))
    assert [place.name for place in openings_to_air(PLAIN_SITE)] == ["kitchen door", "bath window"]
    assert [place.name for place in openings_to_air(replace(PLAIN_SITE, buildings=(fixed,)))] == ["kitchen door"]


def test_smoke_at_doors_adds_up():
    """North wind: 8 ft out from the kitchen door it is always in the smoke and the window, 20 ft aside, never; behind
    the wall neither; halfway between both, 10 ft aside and 30 out, both are."""
    found = door_smoke(blown(N=1), "wood", np.array([20.0, 20.0, 30.0]), np.array([20.0, 4.0, 42.0]))
    assert found[:2] == pytest.approx([1, 0])
    assert 1.0 < found[2] <= 2.0
    assert door_smoke(blown(S=1), "wood", np.array([20.0]), np.array([4.0]))[0] == 0


def test_an_opening_sees_only_what_is_in_front_of_it():
    """South wind blows smoke from the far side of the house to its door's wall, not into the door."""
    (building,) = PLAIN_SITE.buildings
    behind = np.array([20.0]), np.array([-8.0])
    assert door_smoke(blown(S=1), "wood", *behind)[0] == 0
    turned = replace(building, doors=(Door("front", (20, 0), 3, (0, -1)),), windows=())
    assert door_smoke(replace(blown(S=1), buildings=(turned,)), "wood", *behind)[0] == pytest.approx(1)


def test_a_site_without_openings():
    """Nothing to smoke into."""
    bare = replace(blown(N=1), buildings=())
    assert door_smoke(bare, "wood", np.zeros(3), np.zeros(3)).tolist() == [0, 0, 0]
