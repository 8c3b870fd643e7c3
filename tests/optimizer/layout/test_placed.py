"""Rooms joined with their places: who is there, and the geometry of a room where it stands."""

from dataclasses import replace

import pytest

from optimizer.catalogue import Item
from optimizer.layout import Layout, placed_of
from tests.yards import plain_layout, plain_rooms, sized, stand

CHAIR = Item("chair", 1, 2, 2, 1, seats=1)


def alone(front="+y", size=(8, 7), *, room=None, choice="plain"):
    """A nook with one chair, at (20, 10)."""
    nook = room or sized("nook", "nook", 8, 7)
    nook = replace(nook, choices=(replace(nook.choices[0], furniture=(CHAIR,)),))
    return placed_of((nook,), Layout((stand("nook", 20, 10, *size, front, choice=choice),))).rooms[0]


def test_rooms_are_found_by_name_and_kind():
    """A room that is left out, or that nobody wished, is not among the rooms; what stands there is all there."""
    placed = placed_of(plain_rooms(), plain_layout(stand("den", 2, 20, 6, 6), without=("fire",)))
    assert [room.name for room in placed] == ["table", "cooker", "nook"]
    assert len(placed) == 3
    assert placed.of("fire") is None
    assert placed.of("den") is None
    assert placed.left_out == {"fire"}
    assert [room.name for room in placed.of_kind("nook", "fire", "gathering")] == ["table", "nook"]
    assert len(placed.shapes) == 4


def test_of_two_of_a_name_the_first_is_found():
    """A room that stands twice is twice among the rooms, which the check tells."""
    placed = placed_of(plain_rooms(), Layout((stand("nook", 2, 20, 8, 7), stand("nook", 12, 20, 8, 7))))
    assert len(placed) == 2
    assert placed.of("nook") is placed.rooms[0]


def test_an_unknown_choice_has_no_furniture():
    """The room stands there all the same."""
    nook = alone(choice="grand")
    assert nook.choice is None
    assert nook.furniture == ()
    assert nook.kept_from_paths == ()
    assert nook.shape.bounds == (20, 10, 28, 17)
    placed = placed_of(plain_rooms(), plain_layout(stand("nook", 28, 31, 8, 7, choice="grand")))
    assert [room.name for room, _ in placed.chosen] == ["table", "cooker", "fire"]


@pytest.mark.parametrize(
    ("front", "size", "bounds"),
    [
        ("+y", (8, 7), (21, 12, 23, 13)),
        ("-y", (8, 7), (25, 14, 27, 15)),
        ("+x", (7, 8), (22, 15, 23, 17)),
        ("-x", (7, 8), (24, 11, 25, 13)),
        ("+y", (9, 8), (21.5, 12.5, 23.5, 13.5)),
    ],
)
def test_furniture_turns_with_its_room(front, size, bounds):
    """From the room's own axes, about its middle, where it stays when the room is rounded up to the grid."""
    ((item, ground),) = alone(front, size).furniture
    assert item is CHAIR
    assert ground.bounds == pytest.approx(bounds)


def test_open_sides():
    """A room with a front is entered there, another on its open sides, one of unknown choice everywhere."""
    cooker = placed_of(plain_rooms(), plain_layout()).of("cooker")
    assert cooker.open_sides == ("-x",)
    assert cooker.anchor == (38, 22)
    walled = replace(sized("nook", "nook", 8, 7).choices[0], sides=(("back", "seat wall"),))
    nook = alone(room=replace(sized("nook", "nook", 8, 7), choices=(walled,)))
    assert set(nook.open_sides) == {"+y", "+x", "-x"}
    assert nook.sides_in_use("seat wall") == ("-y",)
    assert nook.anchor == nook.centre
    assert len(alone(choice="grand").open_sides) == 4
