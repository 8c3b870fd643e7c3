"""The sun's place and its shadows against published figures and trigonometry."""

import math

import numpy as np
import pytest
from shapely import Polygon

from optimizer.brief import SunWish
from optimizer.fields.sun import Caster, shades_of, shadow, sun_directions, sun_hours
from optimizer.site import Building, Place, Setbacks, Site

WASHINGTON = Place(38.895, -77.036, "America/New_York")


def open_site(place: Place, *buildings: Building) -> Site:
    """A field of 200 ft with nothing on it but these buildings."""
    corners = ((0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0))
    return Site(place, corners, ("a", "b", "c", "d"), (Setbacks(),) * 4, buildings=buildings)


@pytest.mark.parametrize(("month", "noon_h", "altitude_deg"), [(6, 13 + 10 / 60, 74.6), (12, 12 + 6 / 60, 27.7)])
def test_noon_altitude_in_washington(month, noon_h, altitude_deg):
    """Solstice noon altitudes 74.6 and 27.7 deg; noon in June at 13:10 daylight time.

    Source: Capital Weather Gang, 21 June 2011, citing US Naval Observatory data. Noon in December is from memory.
    """
    wish = SunWish("sun", noon_h - 0.25, noon_h + 0.25, (month,))
    ((altitude, bearing, hours),) = sun_directions(WASHINGTON, wish)
    assert altitude == pytest.approx(altitude_deg, abs=0.1)
    assert bearing == pytest.approx(180, abs=2)
    assert hours == pytest.approx(0.5)


@pytest.mark.parametrize(("altitude_deg", "length_ft"), [(74.6, 2.75), (27.7, 19.05)])
def test_shadow_of_a_ten_foot_wall(altitude_deg, length_ft):
    """2.75 and 19.05 ft on level ground: height / tan(altitude), by trigonometry."""
    reach = 10 / math.tan(math.radians(altitude_deg))
    assert reach == pytest.approx(length_ft, abs=0.01)
    wall = Caster(Polygon([(0, 0), (30, 0), (30, 1), (0, 1)]), 0, 10, 1)
    # Sun due south on the plan: the shadow falls to +y, and with the wall itself covers 30 x (1 + reach).
    ((shade, _),) = shades_of((wall,), altitude_deg=altitude_deg, plan_deg=180)
    assert shade.area == pytest.approx(30 * (1 + reach), rel=1e-6)
    assert shade.bounds[3] == pytest.approx(1 + reach)


def test_a_roof_on_posts_shades_beside_itself():
    """The shadow of a roof has the roof's own area, shifted away from the sun by its height's reach."""
    roof = Caster(Polygon([(0, 0), (10, 0), (10, 10), (0, 10)]), 9, 9, 0.7)
    shade = shadow(roof, (0.0, 1.0))
    assert shade.area == pytest.approx(100)
    assert shade.bounds == pytest.approx((0, 9, 10, 19))


def test_an_open_field_has_the_whole_window():
    """Nothing stands in the way: eight to half past ten is two and a half hours of sun."""
    hours = sun_hours(open_site(WASHINGTON), np.array([[100.0, 100.0]]), SunWish("sun", 8.0, 10.5, (6,)))
    assert hours == pytest.approx([2.5])


def test_a_southern_house_shades_the_other_side():
    """South of the equator the midday sun stands in the north, so the ground south of a house lies in its shadow."""
    house = Building("house", ((80.0, 80.0), (120.0, 80.0), (120.0, 120.0), (80.0, 120.0)), height_ft=20)
    beside = np.array([[100.0, 75.0], [100.0, 125.0]])
    wish = SunWish("sun", 11.5, 13.0, (6,))
    south = sun_hours(open_site(Place(-35.0, 149.0, "Australia/Sydney"), house), beside, wish)
    north = sun_hours(
        open_site(Place(35.0, -90.0, "America/Chicago"), house), beside, SunWish("sun", 11.5, 13.0, (12,))
    )
    assert south == pytest.approx([0.0, 1.5])
    assert north == pytest.approx([1.5, 0.0])


@pytest.mark.parametrize("taller_ft", [25.0, 40.0])
def test_a_taller_house_never_adds_sun(taller_ft):
    """More height, less sun or the same, everywhere."""
    outline = ((80.0, 80.0), (120.0, 80.0), (120.0, 120.0), (80.0, 120.0))
    points = np.stack([axis.ravel() for axis in np.meshgrid(np.arange(5.0, 200, 10), np.arange(5.0, 200, 10))], axis=1)
    wish = SunWish("sun", 15.0, 18.0, (4, 9))
    low, high = (
        sun_hours(open_site(WASHINGTON, Building("house", outline, height_ft=height)), points, wish)
        for height in (12.0, taller_ft)
    )
    assert (high <= low + 1e-9).all()
    assert high.sum() < low.sum()
