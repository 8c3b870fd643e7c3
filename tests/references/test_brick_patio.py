"""Materials of a brick patio against published examples, the source beside each value."""

import pytest

from optimizer.quantities.figures import value
from optimizer.quantities.paving import base_extension_ft, layer_cuyd, units


def test_units() -> None:
    """10 x 20 ft at 4.5 a sq ft, 5 % breakage and 1.5 a foot of cut edge: 1,035 (Brick Industry Association guide)."""
    assert units(200, 60) == pytest.approx(1035)
    assert units(200, 0) == pytest.approx(945)


def test_sand() -> None:
    """1 in of sand under 200 sq ft: 0.62 cu yd (Brick Industry Association guide)."""
    assert layer_cuyd(200, value("sand_in")) == pytest.approx(0.62, abs=0.005)


def test_base_reaches_beyond_the_edge() -> None:
    """A 4 in base reaches 6 in beyond each edge: 11 x 21 ft, 231 sq ft (ICPI tolerances card)."""
    beyond_ft = 2 * base_extension_ft(4)
    assert (10 + beyond_ft) * (20 + beyond_ft) == pytest.approx(231)


def test_stone() -> None:
    """4 in of stone: 0.01235 cu yd a sq ft, so 2.47 on 200 sq ft (Brick Industry Association guide)."""
    assert layer_cuyd(200, value("patio_base_in")) == pytest.approx(2.47, abs=0.005)


@pytest.mark.parametrize(("base_in", "extension_in"), [(4, 6), (6, 6), (8, 8)])
def test_extension(base_in: float, extension_in: float) -> None:
    """The greater of 6 in and the base's thickness (ICPI tolerances card)."""
    assert base_extension_ft(base_in) * 12 == pytest.approx(extension_in)
