"""Rooms that have grown to a line: where they stood before, and what stands in them."""

from dataclasses import replace

import pytest

from optimizer.catalogue import Item, Quantity
from optimizer.layout import SIDES, Layout, placed_of
from optimizer.layout.pose import SYMMETRIES, Pose
from tests.yards import sized, stand

CHAIR = Item("chair", 1, 2, 2, 1, seats=1)
PLAIN = sized("nook", "nook", 8, 7)
NOOK = replace(
    PLAIN, choices=(replace(PLAIN.choices[0], furniture=(CHAIR,), quantities=(Quantity("floor", 56, by="ground"),)),)
)
TURNS = {"+y": (8, 7), "-y": (8, 7), "+x": (7, 8), "-x": (7, 8)}


def in_place(placement):
    return placed_of((NOOK,), Layout((placement,))).rooms[0]


@pytest.mark.parametrize("side", SIDES)
def test_an_edge_moves_and_the_others_stay(side):
    """The other three edges are where they were; the room knows where it stood, also after a second move."""
    before = stand("nook", 20, 10, 8, 7)
    after = before.grown_to(side, before.edge_ft(side) + (2 if side[0] == "+" else -2))
    assert {each: out for each, out in after.moved_out_ft.items() if out} == {side: 2}
    assert (after.has_grown, before.has_grown) == (True, False)
    assert after.base == before
    again = after.grown_to("+y", after.top_ft + 1)
    assert again.base == before
    assert again.moved_out_ft["+y"] == (3 if side == "+y" else 1)


def test_a_layout_before_growth():
    """Only what has grown changes, and a layout without growth is itself."""
    plain, den = stand("nook", 20, 10, 8, 7), stand("den", 2, 2, 8, 7)
    before = Layout((plain, den))
    assert before.base is before
    assert Layout((plain.grown_to("+x", 29.5), den)).base == before


def test_a_result_that_tells_a_size_alone():
    """Where the corner is not told, the room grew from its lower left one."""
    told = replace(stand("nook", 20, 10, 9, 7), base_width_ft=8.0, base_depth_ft=7.0)
    assert told.base == stand("nook", 20, 10, 8, 7)


@pytest.mark.parametrize("front", TURNS)
@pytest.mark.parametrize("side", SIDES)
def test_furniture_stays_where_it_was(front, side):
    """Whichever way the room looks and grows, its chair does not move; its floor and what pays for it do."""
    before = stand("nook", 20, 10, *TURNS[front], front)
    after = before.grown_to(side, before.edge_ft(side) + (1.5 if side[0] == "+" else -1.5))
    small, large = in_place(before), in_place(after)
    assert large.items("chair")[0].bounds == pytest.approx(small.items("chair")[0].bounds)
    assert large.kept_from_paths[0].bounds == pytest.approx(small.kept_from_paths[0].bounds)
    assert large.shape.area == pytest.approx(large.choice.quantities[0].amount)
    assert large.shape.area > small.shape.area
    assert (large.choice.width_ft, large.choice.depth_ft) == (
        (after.width_ft, after.depth_ft) if front[1] == "y" else (after.depth_ft, after.width_ft)
    )


@pytest.mark.parametrize("matrix", SYMMETRIES)
def test_a_turned_room_has_grown_on_its_turned_side(matrix):
    """There and back a grown room is where it was, and where it stood before turns along."""
    pose = Pose(matrix, (5.0, 7.0))
    layout = Layout((stand("nook", 3, 4, 8, 7, "-x").grown_to("+x", 12.25),))
    assert pose.layout_back(pose.layout(layout)) == layout
    assert pose.layout(layout).base == pose.layout(layout.base)
    (posed,) = pose.layout(layout).placements
    assert {side: out for side, out in posed.moved_out_ft.items() if out} == {pose.front("+x"): 1.25}
