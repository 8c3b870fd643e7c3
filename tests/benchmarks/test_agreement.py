"""What the benchmark of agreement says of a sample."""

import pytest

from optimizer.layout import Layout
from tests.benchmarks.agreement import NOT_COUNTED, Measured, correlation, first_pick_worse, most_missed

ORDER = (100, 200, 300, 400)
"""What the engine counts, and counts rightly, of four layouts."""
JOGS = (900, 600, 300, 0)


def sample():
    """Four layouts that jogs rank the other way round; lawn moves none of them far."""
    rest = dict.fromkeys(NOT_COUNTED, 0.0)
    return [
        Measured(Layout(()), order, {**rest, "order": order, "jogs": jogs, "lawn": lawn})
        for order, jogs, lawn in zip(ORDER, JOGS, (20, 0, 10, 0), strict=True)
    ]


def test_the_loss_that_parts_the_ranks_is_named():
    """By hand: values rise by 100 a layout, scores fall, so ranks are opposite; with jogs known they are the same."""
    assert correlation(sample()) == pytest.approx(-1)
    assert most_missed(sample()) == ("jogs", pytest.approx(1))


def test_the_first_pick_is_held_against_the_best():
    """The engine picks 100, which scores 1020; the best scores 400."""
    assert first_pick_worse(sample()) == pytest.approx(1020 / 400 - 1)
