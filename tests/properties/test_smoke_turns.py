"""Smoke on random sites: shares stay shares, turning the wind turns the smoke, and farther is never smokier."""

from dataclasses import replace
from math import cos, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import box

from optimizer.fields.smoke import SmokedPlace, openings_to_air, smoke_share
from optimizer.site import Place, WindRose
from tests.yards import PLAIN_SITE

SQUARE = SmokedPlace("square", box(-6, -4, 6, 4))  # about the origin, so that a half turn maps it onto itself
SOURCES = st.sampled_from(["wood", "gas", "grill"])
ANGLES = st.floats(0, 6.28)


@st.composite
def windy_sites(draw):
    """The plain site with any rose, its plan turned anyhow."""
    parts = draw(st.lists(st.integers(0, 9), min_size=16, max_size=16))
    total = max(1, sum(parts) + draw(st.integers(0, 9)))
    place = Place(40, -83, "America/New_York", draw(st.floats(0, 360)))
    return replace(PLAIN_SITE, place=place, wind_rose=WindRose(tuple(part / total for part in parts)))


def share(site, source, place, x, y):
    """Share for one source."""
    return float(smoke_share(site, source, place, np.array([x]), np.array([y]))[0])


@given(windy_sites(), SOURCES, st.floats(-70, 70), st.floats(-70, 70))
def test_shares_are_shares(site, source, x, y):
    """Between nothing and the time with wind."""
    for place in (SQUARE, *openings_to_air(site)):
        assert 0 <= share(site, source, place, x, y) <= sum(site.wind_rose.shares) + 1e-9


@given(windy_sites(), SOURCES, ANGLES, st.floats(8, 60))
def test_turning_the_wind_swaps_upwind_and_downwind(site, source, angle, away):
    """With the wind turned by 180 degrees a source has the share that the one across the place had."""
    x, y, shares = away * cos(angle), away * sin(angle), site.wind_rose.shares
    turned = replace(site, wind_rose=WindRose(shares[8:] + shares[:8]))
    assert share(turned, source, SQUARE, x, y) == pytest.approx(share(site, source, SQUARE, -x, -y), abs=1e-6)


@given(windy_sites(), SOURCES, ANGLES, st.floats(0.5, 60), st.floats(0, 20))
def test_farther_is_never_smokier(site, source, angle, near, more):
    """Straight away from the middle of a place or an opening."""
    for place in (SQUARE, *openings_to_air(site)):
        middle = place.shape.centroid
        ends = [(middle.x + away * cos(angle), middle.y + away * sin(angle)) for away in (near, near + more)]
        assert share(site, source, place, *ends[1]) <= share(site, source, place, *ends[0]) + 1e-6


@given(windy_sites(), SOURCES, st.floats(-60, 60), st.floats(-60, 60), st.integers(0, 15))
def test_turning_the_compass_changes_nothing(site, source, x, y, steps):
    """With +y and the wind both turned by some sectors the plan stays as it was."""
    shares = site.wind_rose.shares
    place = replace(site.place, plan_up_bearing_deg=site.place.plan_up_bearing_deg + 22.5 * steps)
    turned = replace(site, place=place, wind_rose=WindRose(shares[-steps:] + shares[:-steps] if steps else shares))
    assert share(turned, source, SQUARE, x, y) == pytest.approx(share(site, source, SQUARE, x, y), abs=1e-6)
