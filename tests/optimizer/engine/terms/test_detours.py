"""What walking round buildings adds to the straight pulls of the model."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.brief import Trip
from optimizer.catalogue import rates
from optimizer.engine.grid.anchors import anchors_ft
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.rules.relations import everywhere
from optimizer.engine.terms import detours
from optimizer.site import Entrance
from tests.yards import PLAIN_SITE, on_site, plain_rooms, plain_yard


def found(entrance):
    """Losses of a nook with one trip from an entrance, its context and variant."""
    yard = on_site(plain_yard(ceiling=None), entrances=(entrance,), trees=(), keep_outs=())
    yard = replace(yard, brief=replace(yard.brief, trips=(Trip("gate", "nook", 1),)))
    context = context_of(yard, plain_rooms())
    nook = context.rooms[3]
    variant = variants_of(nook, context.lattice)[0]
    return context, variant, detours.TERM.place(context, nook, variant, everywhere(context))


def at(context, variant, losses, x, y):
    """Loss where the nook's middle lies at a place of the plan."""
    xs, ys = anchors_ft(context.lattice, variant)
    posed = context.pose.point((x, y))
    row, column = np.unravel_index(np.argmin(np.hypot(xs - posed[0], ys - posed[1])), xs.shape)
    return losses[row, column]


def test_no_detour_in_sight():
    """Along one axis from the gate nothing stands in the way, and the pull falls short of the way by what a straight
    line is less than its rectilinear way on average.
    """
    context, variant, losses = found(Entrance("gate", (0, 20), 5, (1, 0)))
    expected = 30 * (1 - np.pi / 4) - 3
    assert at(context, variant, losses, 30, 20) == pytest.approx(rates().walking * expected, abs=1.5)


def test_a_detour_round_the_house():
    """From a gate in the street, before the middle of a house of 40 by 12 ft, a place behind it is reached round a
    corner: 20 ft aside, back again, and on, less what 45 degrees save.
    """
    house = replace(PLAIN_SITE.buildings[0], outline=((10, 10), (50, 10), (50, 22), (10, 22)), doors=(), windows=())
    yard = on_site(plain_yard(ceiling=None), buildings=(house,), trees=(), keep_outs=(), structures=())
    yard = on_site(yard, entrances=(Entrance("gate", (30, 0), 5, (0, 1)),))
    yard = replace(yard, brief=replace(yard.brief, trips=(Trip("gate", "nook", 1),)))
    context = context_of(yard, plain_rooms())
    variant = variants_of(context.rooms[3], context.lattice)[0]
    losses = detours.TERM.place(context, context.rooms[3], variant, everywhere(context))
    # (30, 0) to (50, 10) to (50, 22) to (30, 32) in steps of 45 degrees, about half a cell outside the corners.
    way = 2 * (10 * 2**0.5 + 10) + 12
    assert at(context, variant, losses, 30, 32) == pytest.approx(rates().walking * (way - 3 - 32 * np.pi / 4), abs=2.5)
