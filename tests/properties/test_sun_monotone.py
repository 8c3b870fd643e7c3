"""More in the way of the sun never adds sun, and a turned plan has the same hours."""

from dataclasses import replace

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from optimizer.brief import SunWish
from optimizer.fields import cover_caster, sun_hours
from optimizer.site import Building, Place, SpotLevel
from tests.swept_shadow import HOUSE, box, crowded_site

POINTS = np.random.default_rng(3).uniform((0, 0), (100, 120), (120, 2))
LEVELS = (SpotLevel((0, 0), 3.0), SpotLevel((100, 0), 0.0), SpotLevel((0, 120), -2.0), SpotLevel((100, 120), 1.0))
latitudes = st.floats(-80, 80)
months = st.integers(1, 12)
starts = st.floats(0, 22)
grounds = st.sampled_from([(), LEVELS])


def window(month: int, start: float) -> SunWish:
    """Two hours of a day."""
    return SunWish("sun", start, start + 2.0, (month,))


@settings(max_examples=40, deadline=None)
@given(latitudes, months, starts, grounds, st.floats(3, 60), st.floats(0.1, 60))
def test_a_taller_house_never_adds_sun(latitude, month, start, levels, height, more):
    """Nowhere, in no month, at no hour."""
    site = crowded_site(place=Place(latitude, 0.0, "UTC", 25), levels=levels)
    low, high = (
        sun_hours(replace(site, buildings=(Building("house", HOUSE, height_ft=h),)), POINTS, window(month, start))
        for h in (height, height + more)
    )
    assert (high <= low + 1e-9).all()


@settings(max_examples=40, deadline=None)
@given(latitudes, months, starts, grounds, st.floats(0, 1), st.floats(0, 1))
def test_a_denser_cover_never_adds_sun(latitude, month, start, levels, share, other):
    """Nowhere; none at all is the thinnest of covers."""
    site, wish = crowded_site(place=Place(latitude, 0.0, "UTC", 25), levels=levels), window(month, start)
    thin, dense = (
        sun_hours(site, POINTS, wish, extra=(cover_caster(box(30, 60, 40, 30), 10.0, s),))
        for s in (min(share, other), max(share, other))
    )
    assert (dense <= thin + 1e-9).all()
    assert (thin <= sun_hours(site, POINTS, wish) + 1e-9).all()


@settings(max_examples=20, deadline=None)
@given(st.integers(1, 3), months, starts)
def test_a_plan_turned_by_quarters_has_the_same_hours(quarters, month, start):
    """The yard turned counter-clockwise with its +y turned likewise is the same yard."""
    turn = np.linalg.matrix_power(np.array([(0, 1), (-1, 0)]), quarters)  # rows (x, y) to (-y, x)
    house = tuple((float(x), float(y)) for x, y in np.array(HOUSE) @ turn)
    bare = crowded_site(buildings=(Building("house", HOUSE, height_ft=21),), structures=(), trees=(), surroundings=())
    place = replace(bare.place, plan_up_bearing_deg=bare.place.plan_up_bearing_deg + 90 * quarters)
    turned = replace(bare, place=place, buildings=(Building("house", house, height_ft=21),))
    wish = window(month, start)
    assert np.allclose(sun_hours(turned, POINTS @ turn, wish), sun_hours(bare, POINTS, wish))
