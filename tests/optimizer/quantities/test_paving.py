"""Materials of paved areas."""

import pytest

from optimizer.quantities.paving import base_extension_ft, layer_cuyd


def test_a_thicker_base_takes_more_stone_and_reaches_farther() -> None:
    """8 in of base is twice 4 in, and reaches 8 in beyond the edge instead of 6."""
    assert layer_cuyd(100, 8) == pytest.approx(2 * layer_cuyd(100, 4))
    assert (base_extension_ft(4) * 12, base_extension_ft(8) * 12) == (6, 8)
