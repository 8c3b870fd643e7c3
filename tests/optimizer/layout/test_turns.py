"""Every choice and turn of a room at one place."""

from optimizer.catalogue import sized_rooms
from optimizer.layout import turns_at
from tests.circle_yard import circle_yard

ROOMS = {room.name: room for room in sized_rooms(circle_yard().brief)}


def test_a_rectangle_lies_along_its_front():
    """14 ft along the side that it opens to and 12 ft deep, with the same corner in each turn."""
    found = [(p.front, p.x_ft, p.y_ft, p.width_ft, p.depth_ft) for p in turns_at(ROOMS["table"], (3.0, 5.0))]
    assert sorted(found) == [
        ("+x", 3.0, 5.0, 12.0, 14.0),
        ("+y", 3.0, 5.0, 14.0, 12.0),
        ("-x", 3.0, 5.0, 12.0, 14.0),
        ("-y", 3.0, 5.0, 14.0, 12.0),
    ]


def test_a_circle_stays_one():
    """In every choice, as wide as deep."""
    room = ROOMS["fire circle"]
    found = list(turns_at(room, (3.0, 5.0), ["+y"]))
    assert [p.choice for p in found] == [choice.label for choice in room.choices]
    assert all(p.is_circle and p.width_ft == p.depth_ft for p in found)
