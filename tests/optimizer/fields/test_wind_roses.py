"""Roses of a site, and of a file of weather."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.errors import InputError
from optimizer.fields.weather import rose_from_epw
from optimizer.fields.wind import SECTORS, calm_share, share_from, wind_rose
from optimizer.site import WindRose
from tests.weather_file import HEAD, epw_text, write_epw
from tests.yards import PLAIN_SITE

MAY_TO_SEPTEMBER = (5, 6, 7, 8, 9)


def only(**shares: float) -> WindRose:
    """Rose with these sectors and calm."""
    return WindRose(tuple(shares.get(name, 0.0) for name in SECTORS))


def west_in_the_evening(start):
    """West wind of 3 m/s from May to September between 16 and 22 o'clock, calm before 20 o'clock in May, else north."""
    evening = 16 <= start.hour < 22 and 5 <= start.month <= 9
    if not evening:
        return 360, 8
    return (0, 0) if start.month == 5 and start.hour < 20 else (270, 3)


def test_a_given_rose_is_the_rose():
    """It wins over a prevailing wind."""
    site = replace(PLAIN_SITE, wind_from_deg=10, wind_rose=only(W=0.3, SW=0.2))
    assert wind_rose(site) == only(W=0.3, SW=0.2)


def test_a_rose_of_more_than_everything_is_scaled_down():
    """Shares rounded up to 1.25 keep their proportions."""
    rose = wind_rose(replace(PLAIN_SITE, wind_rose=only(W=0.75, SW=0.5)))
    assert rose is not None
    assert rose.shares[12] == pytest.approx(0.6)
    assert calm_share(rose) == pytest.approx(0)


@pytest.mark.parametrize(
    ("from_deg", "sectors"), [(240, ("SW", "WSW", "W")), (359, ("NNW", "N", "NNE")), (348, ("NW", "NNW", "N"))]
)
def test_a_prevailing_wind_is_spread(from_deg, sectors):
    """0.5 from the sector it lies in, 0.2 from each neighbour, also across north; a tenth is calm."""
    rose = wind_rose(replace(PLAIN_SITE, wind_from_deg=from_deg))
    assert rose == only(**dict(zip(sectors, (0.2, 0.5, 0.2), strict=True)))
    assert calm_share(rose) == pytest.approx(0.1)


def test_no_wind_is_known():
    """A site without wind has no rose."""
    assert wind_rose(PLAIN_SITE) is None


def test_share_of_an_arc():
    """Of west wind only: the sector's 22.5 degrees hold all, its upper half a half, the arc over north none."""
    found = share_from(only(W=0.8), np.array([258.75, 270, 340, 0, 100]), np.array([22.5, 22.5, 40, 360, 720]))
    assert found == pytest.approx([0.8, 0.4, 0, 0.8, 0.8])


def test_rose_of_evenings(tmp_path):
    """918 evening hours, 124 of them calm: 31 days of May with 4 hours each. 794 of 918 blow from the west."""
    path = write_epw(tmp_path / "invented.epw", west_in_the_evening)
    rose = rose_from_epw(path, MAY_TO_SEPTEMBER, 16, 22)
    assert dict(zip(SECTORS, rose.shares, strict=True))["W"] == pytest.approx(794 / 918)
    assert calm_share(rose) == pytest.approx(124 / 918)


def test_rose_over_midnight(tmp_path):
    """From 21 to 1 o'clock in June: one hour of west wind, three of north wind."""
    path = write_epw(tmp_path / "invented.epw", west_in_the_evening)
    rose = dict(zip(SECTORS, rose_from_epw(path, (6,), 21, 1).shares, strict=True))
    assert (rose["W"], rose["N"]) == pytest.approx((0.25, 0.75))


def test_hours_without_a_wind_are_left_out(tmp_path):
    """One evening hour in twelve is missing (999): the rose is that of the others."""
    path = write_epw(tmp_path / "gaps.epw", lambda at: (999, 999) if at.day % 2 and at.hour == 16 else (90, 2))
    assert rose_from_epw(path, (6,), 16, 22) == only(E=1)


def test_calm_needs_no_direction(tmp_path):
    """A speed below 1 mph is calm though the direction is missing; just above it is wind."""
    path = write_epw(tmp_path / "calm.epw", lambda at: (90, 0.5) if at.day == 1 else (999, 0.4))
    rose = rose_from_epw(path, (6,), 0, 24)
    assert rose.shares[4] == pytest.approx(1 / 30)
    assert calm_share(rose) == pytest.approx(29 / 30)


WHOLE = epw_text(lambda _: (270, 3))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "an empty file"),
        ("name: no weather\n", "begins with LOCATION, found 'name: no weather"),
        (HEAD.format(latitude=40), "found no row"),
        (HEAD.format(latitude="up"), "rows that do not read"),
        ("LOCATION,only\n", "rows that do not read"),
        (HEAD.format(latitude=40) + "a,b,c\n" * 9000, "rows that do not read"),
        (epw_text(lambda _: (270, 3), hours=4345), "all 744 hours of month 7, found 1 of them"),
        (epw_text(lambda _: (270, 3), hours=4344), "all 744 hours of month 7, found none of them"),
        (epw_text(lambda _: (999, 999)), "at least 90% of the 918 hours asked for, found one in 0"),
        (WHOLE.replace(",270,3,", ",west,3,"), "found one in 0"),
        (WHOLE[: len(WHOLE) // 2], "hours of month 7"),
    ],
    ids=["empty", "other", "head", "latitude", "one line", "words", "cut", "month", "no wind", "letters", "mid row"],
)
def test_a_bad_file_is_told(tmp_path, text, words):
    """What cannot be used is refused with what was expected and found, and the file's name."""
    path = tmp_path / "bad.epw"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        rose_from_epw(path, MAY_TO_SEPTEMBER, 16, 22)
    assert words in str(caught.value)
    assert str(caught.value).startswith(str(path))


def test_a_file_that_is_not_there_is_told(tmp_path):
    """A missing file and a folder are problems of the input; nothing is fetched for an address."""
    for path in (tmp_path, tmp_path / "none.epw", tmp_path / "http:" / "none.epw"):
        with pytest.raises(InputError, match="cannot be opened"):
            rose_from_epw(path, (6,), 16, 22)


def test_bytes_that_are_no_text_are_told(tmp_path):
    """A binary file is not an EPW file."""
    path = tmp_path / "bytes.epw"
    path.write_bytes(bytes(range(256)) * 40)
    with pytest.raises(InputError, match="begins with LOCATION"):
        rose_from_epw(path, (6,), 16, 22)


def test_a_window_without_an_hour_is_told(tmp_path):
    """Between 16:00 and 16:20 the file has no hour's middle."""
    path = write_epw(tmp_path / "year.epw", lambda _: (270, 3))
    with pytest.raises(InputError, match="a window of at least an hour"):
        rose_from_epw(path, (6,), 16, 16 + 1 / 3)


def test_a_far_too_large_file_is_told(tmp_path, monkeypatch):
    """What is much larger than a year by the hour is not read."""
    monkeypatch.setattr("optimizer.fields.weather._LARGEST_BYTES", 1000)
    with pytest.raises(InputError, match="a much larger file"):
        rose_from_epw(write_epw(tmp_path / "large.epw", lambda _: (270, 3)), (6,), 16, 22)
