"""Materials of paved areas."""

import pytest

from optimizer.quantities.paving import base_extension_ft, layer_cuyd, paving_materials


def test_materials_grow_with_the_area() -> None:
    """Twice the area without cut edges takes twice the units and sand."""
    one, two = (paving_materials(width_ft=w, depth_ft=10, cut_edge_ft=0) for w in (10, 20))
    assert two.units == pytest.approx(2 * one.units)
    assert two.sand_cuyd == pytest.approx(2 * one.sand_cuyd)


def test_a_thicker_base_takes_more_stone_and_reaches_farther() -> None:
    """8 in of base is twice 4 in, and reaches 8 in beyond the edge instead of 6."""
    assert layer_cuyd(100, 8) == pytest.approx(2 * layer_cuyd(100, 4))
    assert (base_extension_ft(4) * 12, base_extension_ft(8) * 12) == (6, 8)
