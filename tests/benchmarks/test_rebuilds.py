"""Two trees are timed in turns and set side by side."""

import pytest

from tests.benchmarks.rebuilds import FIGURES, ROOT, asked, measured, table
from tests.small_yard import SMALL


def test_a_tree_is_measured(tmp_path):
    """All four figures come from a process of the tree itself."""
    yard = tmp_path / "small.yaml"
    yard.write_text(SMALL)
    (speeds,) = measured(yard, [ROOT], times=1, layouts=1, warm=("--warm", "5"))
    assert set(speeds) == set(FIGURES)
    assert min(speeds.values()) > 0


def test_two_trees_stand_side_by_side():
    """Half the seconds and twice the rebuilds a second are both twice as fast."""
    this, other = {"read": 1.0, "cold": 40.0, "warm": 60.0, "judge": 10.0}, dict.fromkeys(FIGURES, 20.0)
    head, line = table({"a yard": [this, other]})
    assert head.split().count("other") == 4
    assert line.split()[-1] == "2.00"
    assert line.split()[7] == "2.00"


def test_a_tree_without_an_engine_is_told(tmp_path):
    """What the other tree's process says is passed on."""
    with pytest.raises(RuntimeError, match="nowhere"):
        asked(tmp_path, "lay", "nowhere.yaml")
