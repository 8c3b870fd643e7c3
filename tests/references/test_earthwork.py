"""Volumes of earth against published examples, the source beside each check."""

import numpy as np
import pytest

from optimizer.grading import bank_cuyd, grid_volume_cuft, loose_cuyd


@pytest.mark.parametrize(("depths_ft", "cuft"), [([[0.1, 0.8], [0, 0]], 562.5), ([[1.4, 1.4], [1.2, 1.3]], 3312.5)])
def test_grid_cell(depths_ft: list[list[float]], cuft: float) -> None:
    """A 50 ft cell: 563 and 3,313 cu ft, rounded there (Dagostino & Peterson, ex. 9-5 and 9-8, seen)."""
    assert grid_volume_cuft(np.array(depths_ft), 2500) == pytest.approx(cuft)


def test_cubic_yards() -> None:
    """3,312.5 cu ft are 123 cu yd (the same, ex. 9-8, seen)."""
    assert round(grid_volume_cuft(np.array([[1.4, 1.4], [1.2, 1.3]]), 2500) / 27) == 123


def test_cells_together() -> None:
    """Two cells side by side hold what each holds (arithmetic)."""
    both = grid_volume_cuft(np.array([[0.1, 0.8, 0.4], [0, 0, 1.0]]), 5000)
    assert both == pytest.approx(562.5 + (0.8 + 0.4 + 1.0) / 4 * 2500)


def test_swell() -> None:
    """1,000 cu yd in the bank at 30 % are 1,300 loose, 186 loads of 7 (the same, ex. 9-2, seen)."""
    assert loose_cuyd(1000, swell=1.3) == pytest.approx(1300)
    assert round(loose_cuyd(1000, swell=1.3) / 7) == 186


def test_usual_swell_and_shrink() -> None:
    """Common earth swells by 20 to 30 % (handbooks, seen second-hand); 90 compacted take 100 (common practice)."""
    assert 1.2 <= loose_cuyd(1) <= 1.3
    assert bank_cuyd(90) == pytest.approx(100)
