"""How far a room may have grown: its share of its area, 3 ft on one side, 5 ft to a corner of the house or a post."""

from dataclasses import replace

import pytest

from optimizer.check import check_layout
from optimizer.layout import placed_of
from tests.yards import KEPT, plain_layout, plain_rooms, plain_yard, sized


def grown(name, side, out_ft, *, share=1.0):
    """Findings about the size of one room of the plain yard that has grown on one side."""
    rooms = plain_rooms(*(replace(room, grow=share) for room in plain_rooms()))
    place = KEPT[name]
    at_ft = place.edge_ft(side) + (out_ft if side[0] == "+" else -out_ft)
    layout = plain_layout(place.grown_to(side, at_ft))
    return [f for f in check_layout(plain_yard(), placed_of(rooms, layout)) if f.rule == "known_choice"]


@pytest.mark.parametrize(("share", "out_ft", "held"), [
    (0.2, 2.0, True), (0.14, 2.0, False), (0.15, 2.0, True), (0.0, 0.5, False), (0.0, 0.0, True),
])  # fmt: skip
def test_the_share_of_its_area(share, out_ft, held):
    """The table of 14 x 12 ft is larger by a seventh with 2 ft more along it."""
    found = grown("table", "-x", out_ft, share=share)
    assert (found == []) == held
    assert all("of its area" in finding.words and finding.rooms == ("table",) for finding in found)


@pytest.mark.parametrize(("name", "side", "out_ft", "held"), [
    ("table", "+y", 3.0, True), ("table", "+y", 3.1, False),  # to no line: the structure's lower edge is at 30
    ("fire", "-y", 3.0, True), ("fire", "-y", 4.0, False),
    ("fire", "-x", 3.0, True), ("fire", "-x", 3.5, False),
    ("nook", "+x", 2.0, True), ("nook", "+x", 4.0, False),
])  # fmt: skip
def test_three_feet_on_one_side(name, side, out_ft, held):
    """Whichever side it is."""
    assert (grown(name, side, out_ft) == []) == held


@pytest.mark.parametrize(("x_ft", "y_ft", "held"), [(10, 22, True), (10.5, 22, False), (10, 26, False)])
def test_five_feet_to_a_corner_of_the_house(x_ft, y_ft, held):
    """The house begins at x = 10 and ends at y = 12: an edge carries on from its corner, within 12 ft of it."""
    rooms = plain_rooms(replace(sized("fire", "fire", 8, 8, fuel="gas"), grow=1.0))
    place = replace(KEPT["fire"], x_ft=14.6, y_ft=y_ft)
    found = check_layout(plain_yard(), placed_of(rooms, plain_layout(place.grown_to("-x", x_ft))))
    assert ("known_choice" not in {finding.rule for finding in found}) == held


def test_the_size_before_is_a_choice_s():
    """A room that was never of its choice's size has not grown, whatever it says."""
    place = replace(KEPT["nook"].grown_to("+x", 37), base_width_ft=8.5)
    rooms = plain_rooms(replace(sized("nook", "nook", 8, 7), grow=1.0))
    off = replace(place, base_depth_ft=6.0)
    words = [
        [f.words for f in check_layout(plain_yard(), placed_of(rooms, plain_layout(p))) if f.rule == "known_choice"]
        for p in (place, off)
    ]
    assert words[0] == []
    assert "off the size" in words[1][0]


def test_a_room_does_not_grow_inwards():
    """What is smaller than it was has lost something that its choice needs."""
    assert grown("nook", "+x", -1.0)
