"""Near misses with what stands, in the tables that the explorer reads."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.appraisal.order import near_miss_ft
from optimizer.catalogue import rates
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import Variant, variants_of
from optimizer.engine.pairs import Gaps
from optimizer.engine.rules.relations import everywhere
from optimizer.engine.terms import near_misses
from optimizer.layout import Layout
from tests.yards import plain_rooms, plain_yard, stand

CENTS = 100


@pytest.mark.parametrize("step", [1.0, 0.5])
def test_every_place_costs_what_is_measured(step):
    """The cooker alone, at every fifth position of the grid; some of them cost something, some nothing."""
    yard = plain_yard()
    yard = replace(yard, brief=replace(yard.brief, options=replace(yard.brief.options, grid_step=step)))
    context = context_of(yard, plain_rooms())
    variant = variants_of(context.rooms[1], context.lattice)[0]
    losses = near_misses.TERM.cents(context, context.rooms[1], variant, everywhere(context))
    width_ft, depth_ft = variant.width * step, variant.depth * step
    for row, column in np.argwhere(np.ones_like(losses, dtype=bool))[::5]:
        place = stand("cooker", context.lattice.x_ft(column), context.lattice.y_ft(row), width_ft, depth_ft)
        missed = near_miss_ft(context.site, Layout((place,)))
        assert losses[row, column] == pytest.approx(CENTS * rates().near_miss * missed, abs=1)
    assert 0 < (losses > 0).mean() < 1


def test_a_circle_has_no_edge_that_nearly_meets_one():
    """Of a place by the house and of an offset to another room where its square would lose something."""
    ring, square = Variant(0, 8, 8, None, (8, 8), is_round=True), Variant(0, 8, 8, None, (8, 8))
    context, nook = context_of(plain_yard(), plain_rooms()), Variant(0, 8, 7, None, (8, 7))
    lost = [near_misses.TERM.cents(context, context.rooms[2], v, everywhere(context)).any() for v in (ring, square)]
    (between,) = near_misses.TERM.stamps(context, 2, 3)
    gaps = [Gaps(v, nook, np.array([12]), np.array([1]), 1.0) for v in (ring, square)]
    assert (lost, [bool(between.cents(each).any()) for each in gaps]) == ([False, True], [False, True])
