"""Lengths as people write them."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from optimizer.units import FT_PER_M, feet_from_metres, feet_inches, metres_from_feet, read_length_ft


@pytest.mark.parametrize(
    ("text", "feet"),
    [
        ("12'-6\"", 12.5),
        ("12'6\"", 12.5),
        ("12' 6 1/2\"", 12 + 6.5 / 12),
        ("12′-6″", 12.5),
        ("12’ 6”", 12.5),
        ("12' 6''", 12.5),
        ("12' 6½\"", 12 + 6.5 / 12),
        ('12½"', 12.5 / 12),
        ("12 ft 6 in", 12.5),
        ("12ft6in", 12.5),
        ("12 feet 6 inches", 12.5),
        ("12 FT. 6 IN.", 12.5),
        ("12'", 12.0),
        ("2.5 ft", 2.5),
        ("150 in", 12.5),
        ('6-1/2"', 6.5 / 12),
        ('3/4"', 0.75 / 12),
        ("-2'-6\"", -2.5),
        ("−3 ft", -3.0),
        ("3.8 m", 3.8 / 0.3048),
        ("45 cm", 0.45 / 0.3048),
        ("900 mm", 0.9 / 0.3048),
        ("12", 12.0),
        (".5", 0.5),
    ],
)  # fmt: skip
def test_written_lengths_are_read(text, feet):
    """Every usual spelling of a length is read to feet; expected values by hand."""
    assert read_length_ft(text) == pytest.approx(feet, abs=1e-12)


@pytest.mark.parametrize(
    "value",
    [
        "", "  ", "-", "ft", '"', "12 6", "12' 6", '12"x', "12 mm m", "--3", "1e3", "1_000", "3,8 m", "nan", "inf",
        ".inf", "12' 14\"", "12.5' 6\"", '1/0"', "٣ m", "1" * 41, "forty",
        True, False, None, (), [], {}, math.nan, math.inf, -math.inf, 10**400,
    ],
)  # fmt: skip
def test_what_is_no_length_is_refused(value):
    """Truth values, NaN, infinity, empty text, slips and trailing junk are no lengths."""
    with pytest.raises(ValueError, match="not a length"):
        read_length_ft(value)


def test_bare_numbers_count_in_the_given_unit():
    """A number without a unit is in the file's unit; one with a unit is not."""
    assert read_length_ft(2, unit_ft=FT_PER_M) == pytest.approx(6.56167979)
    assert read_length_ft("2", unit_ft=FT_PER_M) == pytest.approx(6.56167979)
    assert read_length_ft("2 ft", unit_ft=FT_PER_M) == 2.0


@pytest.mark.parametrize(
    ("feet", "text"),
    [
        (12.5, "12'-6\""),
        (12 + 6.5 / 12, "12'-6 1/2\""),
        (0.0, "0'-0\""),
        (-2.5, "-2'-6\""),
        (-0.0001, "0'-0\""),
        (11.999, "12'-0\""),
        (1 + 11.95 / 12, "2'-0\""),
        (0.5 + 0.375 / 12, "0'-6 3/8\""),
    ],
)
def test_feet_and_inches_are_written_as_the_trade_does(feet, text):
    """Feet and inches are rounded to eighths, and a full twelve inches carries into the next foot."""
    assert feet_inches(feet) == text


def test_a_coarser_fraction_rounds_to_it():
    """The denominator sets the least step."""
    assert feet_inches(1 + 0.3 / 12, denominator=2) == "1'-0 1/2\""


def test_nan_is_not_written():
    """No text stands for NaN."""
    with pytest.raises(ValueError, match="not a length"):
        feet_inches(math.nan)


def test_the_international_foot_is_exact():
    """A foot is 0.3048 m exactly (international yard and pound agreement, 1959)."""
    assert feet_from_metres(0.3048) == pytest.approx(1.0, abs=1e-15)
    assert metres_from_feet(1.0) == 0.3048


@given(st.floats(min_value=-5000, max_value=5000), st.sampled_from([1, 2, 4, 8, 16]))
def test_what_is_written_is_read_back_within_half_a_step(feet, denominator):
    """Reading what was written gives the length again, to half the least fraction of an inch."""
    again = read_length_ft(feet_inches(feet, denominator))
    assert abs(again - feet) <= 0.5 / 12 / denominator + 1e-9


@given(st.integers(0, 999), st.integers(0, 11), st.integers(0, 7))
def test_written_eighths_are_read_exactly(feet, inches, eighths):
    """Feet, inches and eighths come back as the same number however they are joined."""
    expected = feet + (inches + eighths / 8) / 12
    for text in (
        f"{feet}'-{inches} {eighths}/8\"",
        f"{feet} ft {inches}-{eighths}/8 in",
        f"{feet}′ {inches} {eighths}⁄8″",
    ):
        assert read_length_ft(text) == pytest.approx(expected, abs=1e-12)


@given(st.text(max_size=60))
def test_any_text_is_a_finite_length_or_refused(text):
    """No text makes anything but a finite length or a ValueError."""
    try:
        length = read_length_ft(text)
    except ValueError:
        return
    assert math.isfinite(length)


@given(st.text("0123456789.'\"-/ ftinmc", max_size=14))
def test_any_near_miss_is_a_finite_length_or_refused(text):
    """Text of the characters that lengths are made of is a finite length or refused, too."""
    try:
        length = read_length_ft(text)
    except ValueError:
        return
    assert math.isfinite(length)
