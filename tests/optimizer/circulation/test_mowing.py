"""The way that a mower takes to a lawn."""

from dataclasses import replace

import pytest

from optimizer.circulation import unmown
from optimizer.layout import Layout, placed_of
from optimizer.site import Entrance, KeepOut
from tests.yards import PLAIN_SITE, plain_rooms, sized, stand

ROOMS = plain_rooms(sized("grass", "lawn", 9, 12))
LAWN = stand("grass", 41, 18, 9, 12)


def walled(opening_ft: float, *, gate_ft: float = 5.0):
    """The plain yard with a wall from the house to the rear that leaves an opening at the house."""
    wall = KeepOut("wall", ((30, 12 + opening_ft), (31, 12 + opening_ft), (31, 40), (30, 40)))
    return replace(PLAIN_SITE, keep_outs=(wall,), entrances=(Entrance("gate", (0, 20), gate_ft, (1, 0)),))


@pytest.mark.parametrize(("gap", "missed"), [(4.0, []), (3.5, ["grass"])])
def test_a_room_before_an_opening(gap, missed):
    """A cooker before an opening of 8 ft leaves a mower 4 ft, or too little."""
    layout = Layout((LAWN, stand("cooker", 24, 12 + gap, 8, 8 - gap)))
    assert list(unmown(walled(8), placed_of(ROOMS, layout))) == missed


@pytest.mark.parametrize(("opening", "gate"), [(3.5, 5.0), (8.0, 3.0)])
def test_what_the_yard_itself_keeps_out_is_no_fault(opening, gate):
    """Where no mower comes through the opening or the gate of the bare yard, no layout is to blame."""
    layout = Layout((LAWN, stand("cooker", 24, 15, 8, 6)))
    assert list(unmown(walled(opening, gate_ft=gate), placed_of(ROOMS, layout))) == []


def test_a_terrace_is_mown_across():
    """A mower crosses a paved room that has room beside its furniture."""
    layout = Layout((LAWN, stand("table", 22, 12, 14, 12)))
    assert list(unmown(walled(8), placed_of(ROOMS, layout))) == []
