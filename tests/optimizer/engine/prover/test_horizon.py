"""Horizons: each lies beyond the last one and beyond what is open, in large steps while little is asked."""

import pytest

from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.prover.horizon import DEAR, MOST, Horizon


@pytest.mark.parametrize("root", [0, 1, 99, 10**6])
@pytest.mark.parametrize("asked", [0, DEAR - 1, DEAR, 50])
def test_each_lies_beyond_the_last(root, asked):
    """Also of a yard where nothing costs anything; in the end all is looked at."""
    horizon = Horizon.of(root)
    assert root < horizon.limit
    for _ in range(MOST):
        farther = horizon.beyond(horizon.limit, asked, FORBIDDEN)
        assert farther.limit > horizon.limit
        horizon = farther
    assert horizon.is_all


def test_steps_grow_while_little_is_asked():
    """By three tenths of the way so far; a hundredth of the limit once models are asked."""
    horizon = Horizon(1000, 1500)
    assert horizon.beyond(1500, DEAR - 1, 9000).limit == 1650
    assert horizon.beyond(1500, DEAR, 9000).limit == 1515


@pytest.mark.parametrize(("best", "is_all"), [(1620, True), (1621, False)])
def test_where_the_best_is_near_all_below_it_is_looked_at(best, is_all):
    """Eight hundredths beyond the limit are near, more are not."""
    assert Horizon(1000, 1500).beyond(1500, 0, best).is_all == is_all


def test_what_is_open_is_within_the_next_one():
    """However far the least of it lies."""
    assert Horizon(1000, 1100).beyond(9000, 0, FORBIDDEN).limit == 9001


def test_one_beyond_which_nothing_lies():
    """All that may be is below it."""
    assert Horizon.all_of(7).is_all
    assert not Horizon.of(7).is_all
