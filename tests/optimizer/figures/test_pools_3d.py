"""Pools in the yard in three dimensions: water below its deck, the barrier round it, the equipment on its pad."""

import numpy as np
import pytest
from shapely import MultiPoint

from optimizer.catalogue import barrier_height_ft
from optimizer.figures import yard_3d
from optimizer.layout import Layout, placed_of
from tests.yards import bathing, plain_yard, stand


@pytest.fixture(scope="module")
def traces():
    """A pool of 8 x 6 ft of water, its deck at 0.5 ft, on level ground at 0."""
    placed = placed_of((bathing("pool"),), Layout((stand("pool", 24, 20, 16, 18, "-y"),)))
    return {trace.name: trace for trace in yard_3d(plain_yard(), placed, {"pool": 0.5}, None).data}


def bounds(trace):
    return MultiPoint(np.stack([trace.x, trace.y], axis=1)).bounds


def test_water_lies_below_its_deck(traces):
    """The water takes the 8 x 6 ft behind the front deck, lower than the deck, which is left open there."""
    water, deck = traces["pool, water"], traces["pool"]
    assert bounds(water) == pytest.approx((28, 28, 36, 34))
    assert max(water.z) < min(deck.z) == 0.5
    assert bounds(deck) == pytest.approx((24, 20, 40, 38))


def test_barrier_and_equipment_stand(traces):
    """The barrier is as high as it must be, half a foot outside the deck; the equipment stands off it."""
    barrier, equipment = traces["pool, barrier"], traces["pool, equipment"]
    assert max(barrier.z) - min(barrier.z) == pytest.approx(barrier_height_ft())
    assert bounds(barrier) == pytest.approx((23.5, 19.5, 40.5, 38.5), abs=0.2)
    assert max(equipment.z) - min(equipment.z) == pytest.approx(3.0)
