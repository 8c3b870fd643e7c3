"""Classes of estimates, rising prices and index series against published figures, the source beside each check."""

from decimal import Decimal

import pytest

from optimizer.brief import Later
from optimizer.catalogue import narrowest
from optimizer.catalogue.data_files import data
from optimizer.catalogue.estimate_classes import Spread

# AACE 18R-97 as quoted by earlyrom.com/guide/estimate-classes (seen second-hand): ranges of an estimate of 100,000.
CLASSES = [
    (5, (80_000, 130_000)),
    (4, (85_000, 120_000)),
    (3, (90_000, 110_000)),
    (2, (95_000, 105_000)),
    (1, (97_000, 103_000)),
]


@pytest.mark.parametrize(("estimate_class", "narrow"), CLASSES)
def test_ranges_of_classes(estimate_class, narrow):
    """What the five classes make of 100,000, at their narrowest."""
    assert narrowest(estimate_class).around(Decimal(100_000)) == narrow


@pytest.mark.parametrize(
    ("estimate_class", "wide"), [(5, (50_000, 200_000)), (4, (70_000, 150_000)), (3, (80_000, 130_000))]
)
def test_widest_ranges_of_classes(estimate_class, wide):
    """What the same page gives for the classes at their widest: the other end of each figure."""
    entry = data("estimate_classes.yaml")["classes"][estimate_class]
    spread = Spread(Decimal(str(entry["below"][1])), Decimal(str(entry["above"][1])))
    assert spread.around(Decimal(100_000)) == wide
    least = narrowest(estimate_class)
    assert (least.below, least.above) < (spread.below, spread.above)


def test_percentages_are_said_as_plus_and_minus():
    """Class 4 at its narrowest (the same source)."""
    assert narrowest(4).words == "-15 % to +20 %"


def test_real_growth_and_inflation_together():
    """E = e + I + eI: 2 % of real growth and 3 % of inflation are 5.06 % (GSA P100, form seen; arithmetic)."""
    real, general = (Later(Decimal(1), Decimal(rate)).rise(2) for rate in ("0.02", "0.03"))
    together = (1 + real) * (1 + general) - 1
    assert together == Decimal("0.0506")
    assert Later(Decimal(1), Decimal("0.0506")).rise(2) == together


@pytest.mark.parametrize(("years", "factor"), [(1, "0.971"), (3, "0.915"), (5, "0.863"), (10, "0.744")])
def test_present_value(years, factor):
    """Single present value at 3 % (form and table of NIST Handbook 135, from memory; arithmetic exact)."""
    assert round(1 / (1 + Later(Decimal(years), Decimal("0.03")).rise(2)), 3) == Decimal(factor)


def test_index_series():
    """Producer price index of concrete block and brick, 2011 to 2012: 223.2 to 225.6 is 1.075 % (BLS, seen). Sand and
    gravel, Midwest, December 2012 to 2018: 100.0 to 134.7 is 5.09 % a year (FRED WPU132101202, seen).
    """
    block, gravel = (Later(Decimal(years), Decimal(rate)).rise(2) for years, rate in ((1, "0.01075"), (6, "0.0509")))
    assert float(block) == pytest.approx(225.6 / 223.2 - 1, abs=1e-5)
    assert float(100 * (1 + gravel)) == pytest.approx(134.7, abs=0.05)
