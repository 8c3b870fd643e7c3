"""Which concepts come first: every wished room, then other ideas, then one wish fewer."""

import pytest

from optimizer.concepts.leading import Standing, leading


def lead(*concepts):
    """Places of those that lead, of (score, wished rooms lacking, idea)."""
    return leading([Standing(*concept) for concept in concepts])


def test_the_first_three_follow_three_ideas():
    """Each the best of its own, in the order of their scores; the second best of an idea waits."""
    assert lead((100, 0, "court"), (101, 0, "court"), (104, 0, "roof"), (103, 0, "garden")) == (0, 3, 2)
    assert lead((104, 0, "roof"), (101, 0, "court"), (100, 0, "court"), (105, 0, "roof")) == (2, 0)
    assert lead((100, 0, "a"), (101, 0, "b"), (102, 0, "c"), (103, 0, "d")) == (0, 1, 2)


def test_only_near_the_best():
    """Within 10 % of the best score."""
    assert lead((100, 0, "court"), (110, 0, "roof")) == (0, 1)
    assert lead((100, 0, "court"), (110.1, 0, "roof")) == (0,)


def test_no_more_left_out_than_in_the_first():
    """An idea that lacks a room is no second; the first has every room though another idea is better without one."""
    assert lead((100, 0, "court"), (101, 1, "roof"), (102, 0, "garden"), (103, 1, "axis")) == (0, 2, 1)
    assert lead((100, 1, "roof"), (105, 0, "court"), (106, 0, "garden")) == (1, 2, 0)
    assert lead((100, 2, "roof"), (101, 1, "court"), (102, 3, "garden"), (103, 2, "axis")) == (0, 1, 3)


def test_one_wish_fewer_comes_where_ideas_leave_a_place():
    """The best that lacks one room, whatever its idea, within the first three."""
    assert lead((100, 0, "court"), (101, 0, "roof"), (102, 1, "court"), (103, 1, "roof")) == (0, 1, 2)
    assert lead((100, 0, "a"), (101, 0, "b"), (102, 0, "c"), (100.5, 1, "a")) == (0, 1, 2)
    assert lead((100, 0, None), (101, 1, None)) == (0, 1)


@pytest.mark.parametrize("first", ["court", None])
def test_none_is_no_idea(first):
    """A concept without an idea does not lead as another idea."""
    assert lead((100, 0, first), (101, 0, None), (102, 0, "roof")) == (0, 2)


def test_nothing_leads_nothing():
    assert lead() == ()
