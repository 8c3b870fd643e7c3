"""The sun's place and its shadows against published figures and trigonometry."""
# ruff: noqa: DTZ001 - moments without a zone are read on the yard's clock

import math
from datetime import UTC, datetime, timedelta

import numpy as np
import pandas as pd
import pytest
from pvlib import solarposition
from shapely import Polygon

from optimizer.brief import SunWish
from optimizer.fields import sun_at, sun_class, sun_hours
from optimizer.fields.sun import Ball, Caster, shades_of, shadows_at, sun_directions
from optimizer.site import Building, Place, Setbacks, Site, SpotLevel, Surrounding

WASHINGTON = Place(38.895, -77.036, "America/New_York")
DISC_RADIUS_DEG = 0.2667  # the sun rises and sets with its upper edge
HORIZON_REFRACTION_DEG = 0.48  # 29 arc minutes lift the sun that stands just on the horizon (memory)


def open_site(place: Place, *buildings: Building, **things: object) -> Site:
    """A field of 200 ft with nothing on it but these things."""
    corners = ((0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0))
    return Site(place, corners, ("a", "b", "c", "d"), (Setbacks(),) * 4, buildings=buildings, **things)


def moment_of(value, place: Place, start: datetime, hours: float) -> datetime:
    """When `value(altitude, bearing)` changes its sign between a start and so many hours later, to the second."""
    low, high = start, start + timedelta(hours=hours)
    before = value(*sun_at(place, low)) > 0
    assert before != (value(*sun_at(place, high)) > 0)
    while high - low > timedelta(seconds=1):
        middle = low + (high - low) / 2
        low, high = (middle, high) if (value(*sun_at(place, middle)) > 0) == before else (low, middle)
    return high


def rise_and_set(place: Place, noon: datetime, altitude_deg: float = -DISC_RADIUS_DEG) -> tuple[datetime, datetime]:
    """Sunrise and sunset within ten hours of a noon."""

    def up(altitude: float, _: float) -> float:
        return altitude - altitude_deg

    return moment_of(up, place, noon - timedelta(hours=10), 10), moment_of(up, place, noon, 10)


def minutes_off(found: datetime, day_seconds: float) -> float:
    """Minutes between a moment and a time of its day."""
    midnight = found.replace(hour=0, minute=0, second=0, microsecond=0)
    return abs((found - midnight).total_seconds() - day_seconds) / 60


def clock(hours: int, minutes: int, seconds: float = 0.0) -> float:
    """Seconds since midnight."""
    return 3600.0 * hours + 60.0 * minutes + seconds


def test_the_worked_example_of_the_algorithm():
    """Zenith 50.111622, azimuth 194.340241 deg on 17 October 2003, 12:30:30 at UTC-7.

    Source: Reda and Andreas, NREL/TP-560-34302, table A5.1 (seen in copies of its example). The example's thin air of
    1,830 m refracts 0.004 deg less than air at sea level, which the program takes.
    """
    place = Place(39.742476, -105.1786, "America/Denver")
    altitude, bearing = sun_at(place, datetime(2003, 10, 17, 19, 30, 30, tzinfo=UTC))
    assert altitude == pytest.approx(90 - 50.111622, abs=0.006)
    assert bearing == pytest.approx(194.340241, abs=0.001)


def test_the_algorithm_alone_says_what_pvlib_says():
    """Its module is loaded without its package: over a year and at four places as `pvlib.solarposition` has it."""
    for latitude, longitude in [(40.0, -83.0), (-33.9, 151.2), (68.0, 20.0), (1.0, 104.0)]:
        when = [datetime(2026, month, 21, hour, 7, tzinfo=UTC) for month in range(1, 13) for hour in range(0, 24, 3)]
        expected = solarposition.get_solarposition(pd.DatetimeIndex(when), latitude, longitude)
        found = np.array([sun_at(Place(latitude, longitude, "UTC"), moment) for moment in when])
        assert found[:, 0] == pytest.approx(expected["apparent_elevation"].to_numpy(), abs=1e-9)
        assert found[:, 1] == pytest.approx(expected["azimuth"].to_numpy(), abs=1e-9)


@pytest.mark.parametrize(
    ("day", "latitude", "rise", "set_"),
    [
        ((1994, 1, 2), 35.0, clock(7, 8, 12.8), clock(16, 59, 55.9)),
        ((1996, 7, 5), -35.0, clock(7, 8, 15.4), clock(17, 1, 4.5)),
        ((2004, 12, 4), -35.0, clock(4, 38, 57.1), clock(19, 2, 2.5)),
    ],
)
def test_published_sunrise_and_sunset(day, latitude, rise, set_):
    """Times at longitude 0, within half a minute.

    Source: NREL/TP-560-34302, table A2.1 (seen in a copy's test file).
    """
    up, down = rise_and_set(Place(latitude, 0.0, "UTC"), datetime(*day, 12, tzinfo=UTC))
    assert minutes_off(up, rise) < 0.5
    assert minutes_off(down, set_) < 0.5


@pytest.mark.parametrize(
    ("day", "rise", "noon", "noon_deg", "set_"),
    [
        ((2011, 6, 21), clock(5, 43), clock(13, 10), 74.6, clock(20, 37)),
        ((2025, 1, 13), clock(7, 26), clock(12, 17), 29.8, clock(17, 8)),
    ],
)
def test_two_days_in_washington(day, rise, noon, noon_deg, set_):
    """Sunrise, noon and sunset on the local clock, daylight time in June; noon altitudes within 0.1 deg.

    Source: Capital Weather Gang, 21 June 2011, citing US Naval Observatory data; a guide to the moon for 13 January
    (both seen). Printed to the minute: within 1.1.
    """
    middle = datetime(*day, 12, 40)
    up, down = rise_and_set(WASHINGTON, middle)
    south = moment_of(lambda _, bearing: bearing - 180, WASHINGTON, middle - timedelta(hours=2), 4)
    assert minutes_off(up, rise) < 1.1
    assert minutes_off(south, noon) < 1.1
    assert minutes_off(down, set_) < 1.1
    assert sun_at(WASHINGTON, south)[0] == pytest.approx(noon_deg, abs=0.1)


def test_the_longest_and_the_shortest_day_in_washington():
    """14 h 54 min on 21 June 2011, printed to the minute; 27.7 deg at noon on 21 December (same source)."""
    up, down = rise_and_set(WASHINGTON, datetime(2011, 6, 21, 13, 10))
    assert (down - up).total_seconds() / 60 == pytest.approx(14 * 60 + 54, abs=1)
    assert sun_at(WASHINGTON, datetime(2011, 12, 21, 12, 6))[0] == pytest.approx(27.7, abs=0.1)


@pytest.mark.parametrize(("latitude", "month"), [(10.0, 6), (-10.0, 12)])
def test_the_longest_day_near_the_equator(latitude, month):
    """12 h 35 min without refraction, and 76 deg 34 min at noon, at latitude magnitude 10.

    Source: R. Fitzpatrick, "Terrestrial Climes", University of Texas (seen).
    """
    place = Place(latitude, 0.0, "UTC")
    up, down = rise_and_set(place, datetime(2026, month, 21, 12, tzinfo=UTC), HORIZON_REFRACTION_DEG)
    assert (down - up).total_seconds() / 60 == pytest.approx(12 * 60 + 35, abs=1)
    noon = up + (down - up) / 2
    assert sun_at(place, noon)[0] == pytest.approx(76 + 34 / 60, abs=0.02)


@pytest.mark.parametrize(("month", "day", "altitude_deg"), [(6, 21, 73.44), (3, 20, 50.0), (12, 21, 26.56)])
def test_noon_altitude_is_ninety_less_latitude_and_declination(month, day, altitude_deg):
    """At latitude 40: 90 - |40 - declination|, declination 23.44, 0 and -23.44 deg. Within 0.1 deg, refraction too."""
    altitudes = [
        sun_at(Place(40.0, 0.0, "UTC"), datetime(2026, month, day, 11, 30) + timedelta(minutes=m))[0] for m in range(60)
    ]
    assert max(altitudes) == pytest.approx(altitude_deg, abs=0.1)


def test_noon_at_the_equator_and_in_the_south():
    """Overhead at the equinox; in the north at 66.56 deg in June; from latitude -35 in June in the north at 31.56 deg."""
    equator, south = Place(0.0, 0.0, "UTC"), Place(-35.0, 0.0, "UTC")
    assert sun_at(equator, datetime(2026, 3, 20, 12, 7))[0] > 89.5
    for place, altitude_deg in ((equator, 66.56), (south, 31.56)):
        altitude, bearing = sun_at(place, datetime(2026, 6, 21, 12, 2))
        assert altitude == pytest.approx(altitude_deg, abs=0.05)
        assert min(bearing, 360 - bearing) < 1


def noaa_place(latitude: float, longitude: float, when: datetime) -> tuple[float, float]:
    """Altitude and bearing [deg] as NOAA's solar calculator has them, after Meeus, without refraction (memory)."""
    century = ((when - datetime(2000, 1, 1, 12, tzinfo=UTC)).total_seconds() / 86400) / 36525
    mean, anomaly = (math.radians(a + b * century) for a, b in ((280.46646, 36000.76983), (357.52911, 35999.05029)))
    centre = 1.914602 * math.sin(anomaly) + 0.019993 * math.sin(2 * anomaly) + 0.000289 * math.sin(3 * anomaly)
    ecliptic = mean + math.radians(centre - 0.00569)
    tilt, e = math.radians(23.439291 - 0.0130042 * century), 0.016708634 - 0.000042037 * century
    declination = math.asin(math.sin(tilt) * math.sin(ecliptic))
    y = math.tan(tilt / 2) ** 2
    equation = y * math.sin(2 * mean) - 2 * e * math.sin(anomaly) - 1.25 * e**2 * math.sin(2 * anomaly)
    equation += 4 * e * y * math.sin(anomaly) * math.cos(2 * mean) - 0.5 * y**2 * math.sin(4 * mean)
    turned = math.radians((when.hour * 60 + when.minute) / 4 + longitude - 180) + equation
    phi = math.radians(latitude)
    east = -math.cos(declination) * math.sin(turned)
    north = math.sin(declination) * math.cos(phi) - math.cos(declination) * math.sin(phi) * math.cos(turned)
    up = math.sin(phi) * math.sin(declination) + math.cos(phi) * math.cos(declination) * math.cos(turned)
    return math.degrees(math.asin(up)), math.degrees(math.atan2(east, north)) % 360


@pytest.mark.parametrize("latitude", [-78.0, -35.0, 0.0, 20.0, 39.96, 60.0])
@pytest.mark.parametrize("month", range(1, 13))
def test_against_the_short_formula(latitude, month):
    """Within 0.02 deg sideways and, with up to 0.09 deg of refraction above 10 deg, 0.11 deg in height.

    NOAA's shorter series of the day of the year is up to 0.6 deg off near the equinoxes of these years (measured).
    """
    for hour in range(0, 24, 2):
        when = datetime(2026, month, 21, hour, 20, tzinfo=UTC)
        altitude, bearing = sun_at(Place(latitude, -83.0, "UTC"), when)
        if altitude > 10:
            other, other_bearing = noaa_place(latitude, -83.0, when)
            assert altitude == pytest.approx(other, abs=0.11)
            aside = (bearing - other_bearing + 180) % 360 - 180
            assert abs(aside * math.cos(math.radians(altitude))) < 0.02


def test_the_plan_up_bearing_turns_the_sun_back():
    """With the plan's +y to the east-north-east the sun stands as much further left."""
    when = datetime(2026, 6, 21, 13, 10)
    turned = Place(WASHINGTON.latitude, WASHINGTON.longitude, WASHINGTON.time_zone, 70.0)
    assert (sun_at(WASHINGTON, when)[1] - sun_at(turned, when)[1]) % 360 == pytest.approx(70)


@pytest.mark.parametrize(("altitude_deg", "length_ft"), [(74.6, 2.75), (27.7, 19.05)])
def test_shadow_of_a_ten_foot_wall(altitude_deg, length_ft):
    """2.75 and 19.05 ft on level ground: height / tan(altitude), by trigonometry."""
    wall = Caster(Polygon([(0, 0), (30, 0), (30, 1), (0, 1)]), 0, 10, 1)
    # Sun due south on the plan: the shadow falls to +y, and with the wall itself covers 30 x (1 + reach).
    ((shade, _),) = shades_of((wall,), altitude_deg=altitude_deg, plan_deg=180)
    assert shade.bounds[3] - 1 == pytest.approx(length_ft, abs=0.01)
    assert shade.area == pytest.approx(30 * (1 + 10 / math.tan(math.radians(altitude_deg))), rel=1e-9)


def test_a_wall_seen_askew_has_the_same_length_of_shadow():
    """Area of a thin wall's shadow: its length x height / tan(altitude) x sine of the angle to the sun; here 45 deg."""
    wall = Caster(Polygon([(0, 0), (30, 0), (30, 1e-6), (0, 1e-6)]), 0, 10, 1)
    ((shade, _),) = shades_of((wall,), altitude_deg=45, plan_deg=135)
    assert shade.area == pytest.approx(30 * 10 * math.sqrt(0.5), rel=1e-5)


def test_a_roof_on_posts_shades_beside_itself():
    """The shadow of a roof has the roof's own area, shifted away from the sun by its height's reach."""
    roof = Caster(Polygon([(0, 0), (10, 0), (10, 10), (0, 10)]), 9, 9, 0.7)
    ((shade, share),) = shades_of((roof,), altitude_deg=45, plan_deg=180)
    assert share == 0.7
    assert shade.area == pytest.approx(100)
    assert shade.bounds == pytest.approx((0, 9, 10, 19))


@pytest.mark.parametrize("altitude_deg", [15, 45, 80])
def test_a_ball_has_an_ellipse_of_shadow(altitude_deg):
    """Radius r, half height c: an ellipse of r by sqrt(r^2 + (c / tan(altitude))^2), by the tangents of the ellipse."""
    ball = Ball((50.0, 50.0), 10.0, 20.0, 50.0, 0.8)
    reach = 1 / math.tan(math.radians(altitude_deg))
    ((shade, _),) = shades_of((ball,), altitude_deg=altitude_deg, plan_deg=180)
    long_ft = math.hypot(10, 15 * reach)
    assert shade.area == pytest.approx(math.pi * 10 * long_ft, rel=0.01)
    assert shade.bounds == pytest.approx((40, 50 + 35 * reach - long_ft, 60, 50 + 35 * reach + long_ft))


@pytest.mark.parametrize("rise", [-0.1, 0.0, 0.1])
def test_a_fence_on_a_slope(rise):
    """On ground that rises away from the sun a shadow is shorter: height / (tan(altitude) + rise), along its bearing."""
    levels = tuple(SpotLevel((x, y), rise * y) for x in (0.0, 200.0) for y in (0.0, 200.0))
    fence = Surrounding("fence", line=((0.0, 50.0), (200.0, 50.0)), height_ft=6)
    site = open_site(WASHINGTON, surroundings=(fence,), levels=levels)
    when = datetime(2026, 12, 21, 12, 7, 30)
    altitude, bearing = sun_at(WASHINGTON, when)
    ahead = -math.cos(math.radians(bearing))  # of each foot along the shadow, how much it goes to +y
    reach_ft = ahead * 6 / (math.tan(math.radians(altitude)) + rise * ahead)
    ((shade, share),) = shadows_at(site, when)
    assert share == 1
    assert shade.bounds[3] == pytest.approx(50 + reach_ft, abs=1e-3)
    points = np.array([[100.0, 50 + reach_ft - 0.02], [100.0, 50 + reach_ft + 0.02], [100.0, 49.0]])
    assert sun_hours(site, points, SunWish("sun", 12.0, 12.25, (12,))) == pytest.approx([0, 0.25, 0.25])


def test_an_open_field_has_the_whole_window():
    """Nothing stands in the way: eight to half past ten is two and a half hours of sun."""
    hours = sun_hours(open_site(WASHINGTON), np.array([[100.0, 100.0]]), SunWish("sun", 8.0, 10.5, (6,)))
    assert hours == pytest.approx([2.5])


@pytest.mark.parametrize(("latitude", "sunny"), [(78.0, 6), (-78.0, 12)])
def test_polar_summer_and_winter(latitude, sunny):
    """At latitude 78 the sun stays 11 deg and more above the horizon on the longest day, below it on the shortest."""
    site = open_site(Place(latitude, 15.0, "UTC"))
    points = np.array([[100.0, 100.0]])
    assert sun_hours(site, points, SunWish("sun", 0.0, 24.0, (sunny,))) == pytest.approx([24])
    assert sun_hours(site, points, SunWish("sun", 0.0, 24.0, (18 - sunny,))) == pytest.approx([0])
    altitudes = [a for a, _, _ in sun_directions(site.place, SunWish("sun", 0.0, 24.0, (sunny,)))]
    assert min(altitudes) == pytest.approx(78 + 23.44 - 90, abs=0.15)
    assert shadows_at(site, datetime(2026, 18 - sunny, 21, 12)) == ()


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


@pytest.mark.parametrize(
    ("hours", "name"),
    [
        (10, "full sun"),
        (6, "full sun"),
        (5.99, "part sun"),
        (4, "part sun"),
        (3.9, "part shade"),
        (2, "part shade"),
        (1.9, "shade"),
        (0, "shade"),
    ],
)
def test_classes_of_sun(hours, name):
    """6 h and more, 4 to 6, 2 to 4, less: Nebraska Extension, "Right plant, right place" (seen)."""
    assert sun_class(hours) == name
