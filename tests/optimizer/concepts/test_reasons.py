"""Plain words for how concepts differ."""

from optimizer.concepts.reasons import ALIKE, difference_words
from optimizer.layout import Layout, Placement


def nook(x, y=0.0, *, choice="one"):
    """A layout of one nook."""
    return Layout((Placement("nook", choice, x, y, 8, 7, "+y"),))


def test_what_moved_and_what_is_missing():
    """Direction by the longer way, sizes, and rooms that are only in one."""
    assert difference_words(nook(20), nook(0)) == "nook farther right"
    assert difference_words(nook(0, 0), nook(4, 20)) == "nook farther down the plan"
    assert difference_words(nook(0, choice="two"), nook(0)) == "nook: two"
    assert difference_words(Layout(()), nook(0)) == "without the nook"
    assert difference_words(nook(0), Layout(())) == "with the nook"
    assert difference_words(nook(2), nook(0)) == ALIKE
