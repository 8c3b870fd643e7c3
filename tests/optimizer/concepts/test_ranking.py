"""Ranking: copies are one concept."""

from optimizer.concepts.ranking import is_same
from optimizer.layout import Layout, Placement


def at(x, y=0.0):
    """A layout of two rooms, the second at (x, y)."""
    return Layout((Placement("a", "one", 0, 0, 10, 10, "+y"), Placement("b", "one", x, y, 10, 10, "+y")))


def test_a_shifted_copy_is_the_same():
    """The same sides and a shift of a few feet are one concept; another side, or a long way, is another."""
    assert is_same(at(20), at(24), diagonal_ft=100)
    assert not is_same(at(20), at(40), diagonal_ft=100)
    assert not is_same(at(20), at(0, 20), diagonal_ft=100)
